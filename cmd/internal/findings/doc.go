// Package findings writes diagnostics: as text for people, as JSON by the
// promise to scripts, and as SARIF for what shows findings beside code.
//
//   - text.go: findings as text
//   - groups.go: findings of one cause, told once
//   - json.go: findings as JSON, by the promise to scripts
//   - sarif.go: findings as SARIF, for what shows them beside code
package findings
