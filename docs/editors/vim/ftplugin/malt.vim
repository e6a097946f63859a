" Vim filetype plugin: process files of maltwright.

if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

" as `maltwright tidy` lays a file out
setlocal expandtab shiftwidth=2 softtabstop=2
setlocal comments=:# commentstring=#\ %s
setlocal formatoptions-=t formatoptions+=croql
" a hyphen is part of a word: air-on, kernel-weight
setlocal iskeyword+=-
" gf on the text behind use opens that file
setlocal include=^\\s*use\\s\\+[\"“„] suffixesadd=.malt

let b:undo_ftplugin = 'setlocal expandtab< shiftwidth< softtabstop< comments< commentstring< formatoptions< iskeyword< include< suffixesadd<'
