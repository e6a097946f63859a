" Vim compiler file: `maltwright check`, so that :make fills the list of errors.

if exists('current_compiler')
  finish
endif
let current_compiler = 'malt'

if exists(':CompilerSet') != 2
  command -nargs=* CompilerSet setlocal <args>
endif
CompilerSet makeprg=maltwright\ check\ --format\ lines
" dangers and faults are errors, cautions warnings, notes notes; what has no place is a line alone
CompilerSet errorformat=%E%f:%l:%c:\ danger:\ %m,%E%f:%l:%c:\ fault:\ %m,%W%f:%l:%c:\ caution:\ %m,%I%f:%l:%c:\ note:\ %m
