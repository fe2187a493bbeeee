" Settings for plans and kits.

if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal comments=:# commentstring=#\ %s
setlocal expandtab shiftwidth=2 softtabstop=2
setlocal formatoptions-=t
" Names may have a hyphen within them.
setlocal iskeyword=@,48-57,_,192-255,-
compiler pullscore

let b:undo_ftplugin = 'setlocal comments< commentstring< expandtab< shiftwidth< softtabstop< formatoptions< iskeyword< makeprg< errorformat<'
