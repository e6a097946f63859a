" Vim indent file: process files of maltwright. A line stands as deep as the blocks
" that are open above it.

if exists('b:did_indent')
  finish
endif
let b:did_indent = 1

setlocal indentexpr=MaltIndent(v:lnum)
setlocal indentkeys=0},o,O,!^F
let b:undo_indent = 'setlocal indentexpr< indentkeys<'

if exists('*MaltIndent')
  finish
endif

" The braces of a line, without those of texts and comments.
function! s:Braces(lnum) abort
  let line = substitute(getline(a:lnum), '["“„]\%(\\.\|[^"”“\\]\)*\%(["”“]\|$\)', '', 'g')
  return substitute(substitute(line, '#.*', '', ''), '[^{}]', '', 'g')
endfunction

function! MaltIndent(lnum) abort
  let above = prevnonblank(a:lnum - 1)
  if above == 0
    return 0
  endif
  " a brace that closes at the start of the line above has moved that line already
  let braces = s:Braces(above)
  if getline(above) =~# '^\s*}'
    let braces = substitute(braces, '^}\+', '', '')
  endif
  let deeper = count(braces, '{') - count(braces, '}')
  let closing = getline(a:lnum) =~# '^\s*}' ? len(matchstr(s:Braces(a:lnum), '^}\+')) : 0
  return max([0, indent(above) + shiftwidth() * (deeper - closing)])
endfunction
