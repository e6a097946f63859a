" Process files of maltwright.
autocmd BufRead,BufNewFile *.malt setfiletype malt
