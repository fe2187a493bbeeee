" Opens $PLAN, runs :make, and writes the file type and the list of errors to $LIST.
execute 'edit' fnameescape($PLAN)
silent! make
let s:lines = [&filetype]
for s:entry in filter(getqflist(), 'v:val.valid')
  call add(s:lines, fnamemodify(bufname(s:entry.bufnr), ':t') . ' ' . s:entry.lnum . ':' . s:entry.col . ' ' . s:entry.type . ' ' . s:entry.text)
endfor
call writefile(s:lines, $LIST)
quitall!
