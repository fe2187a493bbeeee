autocmd BufNewFile,BufRead *.pull setfiletype pull
