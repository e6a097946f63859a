" What somebody does in Vim, which has no client, with a process that has a slip in it.
set nomore
let s:answers = {}
try
  edit pale.malt
  let s:answers.filetype = &filetype
  silent make %
  let s:answers.findings = map(getqflist(), {_, item -> join([item.valid, fnamemodify(bufname(item.bufnr), ':t'), item.lnum, item.col, item.type, item.text], ' ')})
  silent cfirst
  let s:answers.cursor = expand('<cword>')
  normal! ciwwater
  call setline('.', substitute(getline('.'), '7 h', '7    h', ''))
  silent %!maltwright tidy -
  let s:answers.repaired = getline(search('soak 7 h'))
  silent write
  silent make %
  let s:answers.left = len(filter(getqflist(), {_, item -> item.valid && item.type ==# 'E'}))
  call search('loft')
  normal! gf
  let s:answers.followed = expand('%:t')
catch
  let s:answers.failed = v:throwpoint . ': ' . v:exception
endtry
call writefile([json_encode(s:answers)], $MALTWRIGHT_ANSWERS)
qall!
