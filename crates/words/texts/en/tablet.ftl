### This tablet: its colours, its figures, its keys

tablet-title = This tablet
tablet-crumb = Kept on this tablet only
tablet-kept = Saved on this tablet.
tablet-keep = Save

tablet-show = Colours and figures
tablet-theme = Colours
tablet-theme-device = as the device has them
tablet-theme-light = light
tablet-theme-dark = dark
tablet-language = Language
tablet-language-browser = as this browser asks
tablet-language-hint = Other tablets keep theirs
tablet-decimal = Decimals
tablet-decimal-language = as the language has them
tablet-decimal-point = point, as 264.3
tablet-decimal-comma = comma, as 264,3
tablet-decimal-hint = You may type either

tablet-hands = Keys and pedal
tablet-letters = Single letters press buttons
tablet-letters-hint = Switch this off if you speak your entries, or if a letter has pressed something that you did not mean. Enter, the pedal and the scanner go on working.
tablet-pedal = Key of the foot pedal
tablet-pedal-hint = Touch this field and press the pedal. Leave it empty for any function key but F5, F11 and F12.
tablet-pedal-wrong = “{ $key }” cannot be the pedal: it types a letter or moves the cursor
    .next = Set the pedal to a function key, PageDown, Pause or the like

tablet-keys = What the keys do
tablet-key = Key
tablet-does = Does
tablet-where = Where
tablet-key-pedal = Pedal
tablet-key-scanner = Scanner
tablet-key-enter = Enter
tablet-key-tab = Tab
tablet-key-esc = Esc

tablet-everywhere = everywhere
tablet-at-bench = bench
tablet-in-lists = lists, glue
tablet-at-weigh-in = weigh-in
tablet-at-scales = scales

tablet-does-list = the list of this page’s keys
tablet-does-enter = keeps what is typed, then goes to the next club; presses Done at a step that is only done
tablet-does-weigh-enter = keeps the part
tablet-does-pedal = keeps what is typed, wherever the cursor is
tablet-does-scanner = opens the part or the club; at the bench a club’s own card keeps what is typed
tablet-does-tab = goes to the next entry or button
tablet-does-next = next club, next step
tablet-does-all = all clubs at this step
tablet-does-wrong = the last reading was wrong: takes it back
tablet-does-again = reads the last one again
tablet-does-done = done for all clubs
tablet-does-glue = mixes a batch
tablet-does-new = new sheet, part, model or order
tablet-does-weigh-wrong = the last part was wrong
tablet-does-weigh-again = weighs the part once more
tablet-does-check = checks the scale
