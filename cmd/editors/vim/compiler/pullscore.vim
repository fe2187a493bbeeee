" :make checks the plan of the window and lists its findings.

if exists('current_compiler')
  finish
endif
let current_compiler = 'pullscore'

CompilerSet makeprg=pullscore\ check\ %:S
CompilerSet errorformat=%f:%l:%c:\ %t%*[^:]:\ %m,%-G%.%#
