" Writes the syntax group of every byte of every text: the list of the files stands in
" $MALTWRIGHT_TEXTS, a name a line; beside each is written NAME.groups, a line of group
" names for each of its lines, with a blank between them and - where there is none. A text
" with a file NAME.tidy beside it is indented too.
set nomore hidden encoding=utf-8 fileencodings=utf-8 nofoldenable nobomb synmaxcol=0 redrawtime=100000
syntax on
filetype plugin indent on

function! Groups(name) abort
  execute 'edit' fnameescape(a:name)
  let lines = []
  let names = {}
  for lnum in range(1, line('$'))
    let row = []
    let text = getline(lnum)
    for col in range(1, strlen(text))
      if text[col - 1] ==# ' '
        call add(row, '-') " of blanks nobody asks
        continue
      endif
      let id = synID(lnum, col, 0)
      if !has_key(names, id)
        let names[id] = id == 0 ? '-' : synIDattr(id, 'name')
      endif
      call add(row, names[id])
    endfor
    call add(lines, join(row, ' '))
  endfor
  call writefile(lines, a:name . '.groups', 'S')
endfunction

" Indents every line of a text that is laid out anew, and writes what comes of it as NAME.indented.
function! Indented(name) abort
  silent %left
  silent normal! gg=G
  call writefile(getline(1, '$'), a:name . '.indented', 'S')
  setlocal nomodified
endfunction

try
  if &filetype !=# ''
    throw 'a text of no type has one'
  endif
  for s:name in readfile($MALTWRIGHT_TEXTS)
    call Groups(s:name)
    if &filetype !=# 'malt'
      throw s:name . ' is not of the type malt'
    endif
    if filereadable(s:name . '.tidy')
      call Indented(s:name)
    endif
  endfor
catch
  call writefile([v:throwpoint . ': ' . v:exception], $MALTWRIGHT_TEXTS . '.failed')
finally
  qall!
endtry
