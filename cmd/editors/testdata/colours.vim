" Writes how Vim colours the places of files: for each line of $PLACES, which is
" FILE, a tab, LINE and COLUMN in bytes, it writes a line with the name of the group
" to $COLOURS.
syntax on
let s:groups = []
let s:open = ''
for s:line in readfile($PLACES)
  let [s:file, s:row, s:column] = split(s:line, "\t")
  if s:file !=# s:open
    execute 'edit!' fnameescape(s:file)
    let s:open = s:file
  endif
  call add(s:groups, synIDattr(synID(s:row, s:column, 1), 'name'))
endfor
call writefile(s:groups, $COLOURS)
quitall!
