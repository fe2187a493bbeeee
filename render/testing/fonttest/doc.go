// Package fonttest makes fonts for tests.
package fonttest
