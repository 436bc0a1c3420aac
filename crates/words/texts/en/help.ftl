### Help: the guide in the program

page-help = Help
help-title = Help
help-search = Words to look for
help-find = Find
help-nothing = Nothing in the guide has “{ $text }”.
help-contents = All chapters
help-table = Table { $n }
help-quick-card = Quick card for the bench, one page to print
