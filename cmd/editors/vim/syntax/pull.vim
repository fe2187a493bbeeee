" Colours plans and kits by words and shapes. Vim tries the rules that stand last first.

if exists('b:current_syntax')
  finish
endif
let s:cpo = &cpo
set cpo&vim

" Names have letters, digits and _, and the signs of s:joined within them.
syn iskeyword @,48-57,_,192-255
syn sync minlines=60
let s:joined = '%(\k|[-.''’]%(\d)@!\k)'

" s:any returns the pattern of whole words.
function s:any(words) abort
  return '%(' . join(a:words, '|') . ')' . s:joined . '@!'
endfunction

" s:match adds a rule. Its pattern is very magic, and read by the engine that is the
" quicker one with words behind others.
function s:match(group, pattern) abort
  execute 'syn match' a:group '/\%#=1\v' . escape(a:pattern, '/') . '/ contained'
endfunction

" s:line adds the rule of lines that begin in one way, with the soft words that
" mean something in them. A comma at the end of a line joins the next one.
function s:line(name, start, soft) abort
  let l:inside = '@pullInside'
  if !empty(a:soft)
    call s:match(a:name . 'Soft', s:any(a:soft))
    execute 'hi def link' a:name . 'Soft pullClause'
    let l:inside .= ',' . a:name . 'Soft'
  endif
  execute 'syn region' a:name 'start=/\%#=1\v' . escape(a:start, '/') . '/ end=/\%#=1\v%(,\s*%(\s#.*)=)@<!$/ contains=' . l:inside
endfunction

syn cluster pullInside contains=pullComment,pullStatement,pullClause,pullUnit,pullText,pullNumber,pullTimes,pullWord,pullName,pullShotID

" Every word is read whole, so that a rule never begins within one.
call s:match('pullWord', '%(\k&\D)' . s:joined . '*')
call s:match('pullClause', s:any(pullscore#words#keywords))
call s:match('pullUnit', '%(\d\s=)@3<=%(' . join(pullscore#words#units, '|') . ')\k@!')

" NAME: "WORDS", NAME(...), and what cannot be read.
call s:line('pullLine', '^\ze\s*[^ \t#]', [])

" Statements: the words that are never names, and those that are before some signs.
let s:as_name = '%(\s*[:(]|\s+moves' . s:joined . '@!)@!'
let s:can_be_name = 'index(pullscore#words#soft_statements, v:val)'
for [s:words, s:soft] in pullscore#words#inside
  for [s:list, s:behind] in [[filter(copy(s:words), s:can_be_name . ' < 0'), ''], [filter(copy(s:words), s:can_be_name . ' >= 0'), s:as_name]]
    if !empty(s:list)
      let s:start = s:any(s:list) . s:behind
      call s:match('pullStatement', '^\s*\zs' . s:start)
      if !empty(s:soft)
        call s:line('pullLine' . toupper(s:list[0][0]) . s:list[0][1:], '^\s*' . s:start, s:soft)
      endif
    endif
  endfor
endfor
" NAME: "WORDS".
call s:line('pullLineSays', '^\s*%("%(\\.|[^"\\])*"|\k[^ \t:("]*)\s*:', ['off'])
" NAME moves to PLACE.
call s:line('pullLineMoves', '^\s*%(camera\s)@!%("%(\\.|[^"\\])*"|\k[^ \t:("]*)\s+moves' . s:joined . '@!', pullscore#words#moves)

" Soft words behind a word or sign that a name follows: they are names.
for [s:words, s:soft] in pullscore#words#before_names
  let s:names = filter(copy(pullscore#words#soft), 'index(s:soft, v:val) < 0')
  call s:match('pullName', s:any(s:names) . '&%(%(\d\s*)@3<!<' . s:any(s:words) . '\s+)@20<=\k+')
endfor
call s:match('pullName', '^\s*\zs%(camera\s)@!\k[^ \t:("]*%(\s+moves' . s:joined . '@!)@=')
call s:match('pullName', s:any(pullscore#words#soft) . '&%([-+−*/=(]\s*)@9<=\k+')

" No rule below has the end of a line in it: the line would go on behind it.

" Text ends on its line; a sign behind \ ends none.
call s:match('pullText', '"%(\\.|[^"\\])*"=')
call s:match('pullText', '“%(\\.|[^”\\])*”=')

" Numbers, the first form last: a clock position; a timecode or the sides of a
" sensor; feet and inches; a fraction; a decimal.
let s:inch = '%(''''|′′|’’|["″”])'
let s:part = '%(\d+/\d+|\d*\.=\d+)'
call s:match('pullNumber', '\.\d+%([.,]\d+)*')
call s:match('pullNumber', '\d+%([.,]\d+)*')
call s:match('pullNumber', '\d+/\d+%(\.\d)@!')
call s:match('pullNumber', s:part . '[''′’]')
call s:match('pullNumber', s:part . '[''′’]%([-‐‑–]\d@=)=\s*\d+%(\.\d+)=%(%(\s+\d+)=/\d+)=' . s:inch)
call s:match('pullNumber', s:part . s:inch)
call s:match('pullNumber', '\d+\s+\d+/\d+' . s:inch)
call s:match('pullNumber', '\d+%([:;]\d+)+')
call s:match('pullNumber', '\d+%(:\d\d)=\s*o[''’]clock' . s:joined . '@!')
call s:match('pullNumber', '%(^\s*sensor\s.*\s)@<=\d+-perf' . s:joined . '@!')
" Stops.
call s:match('pullNumber', 'f/\d+%([.,]\d+)*')
call s:match('pullNumber', 'T\d+' . s:joined . '@!%([.,]\d+)*')
" The x of 24.89x18.66.
call s:match('pullTimes', '\d@1<=x\d@=')

" What follows the word shot, up to a blank or quote, is the ID.
call s:line('pullLineShot', '^\s*shot\s', [])
call s:match('pullStatement', '^\s*\zsshot\ze\s')
call s:match('pullShotID', '%(^\s*shot\s+)@<=[^ \t"“]*[^ \t"“,]')

" So is what follows the words that speak of another shot, up to a blank, quote or comma.
call s:match('pullShotID', '%(^\s*%(runs\s+with|cut\s+to|camera\s+as\s+in)\s+)@<=[^ \t"“,]+')
call s:match('pullShotID', '%(^\s*matches\s+)@<=%(moves' . s:joined . '@!)@![^ \t"“,:(][^ \t"“,]*')

syn match pullComment /\%(^\|\s\)\zs#.*/

hi def link pullComment Comment
hi def link pullStatement Statement
hi def link pullClause Keyword
hi def link pullTimes pullClause
hi def link pullUnit Type
hi def link pullText String
hi def link pullNumber Number
hi def link pullShotID Identifier

let b:current_syntax = 'pull'
let &cpo = s:cpo
unlet s:cpo
