### Document

# What is wrong with a document.
document-not-json = the text is not JSON at line { $line }, column { $column }: { $what }
document-in-text =
    { $place ->
        [none] the document: { $what } (line { $line }, column { $column })
       *[other] { $place }: { $what } (line { $line }, column { $column })
    }
document-in-value =
    { $place ->
        [none] the document: { $what }
       *[other] { $place }: { $what }
    }
document-of-name =
    { $name ->
        [none] { $what }
       *[other] { $name } { $what }
    }

document-mistake-missing = is missing
document-mistake-unknown-field =
    { $known ->
        [none] unknown field `{ $name }`; there are no fields here
       *[other] unknown field `{ $name }`; known here: { $known }
    }
document-mistake-not-a-choice = “{ $name }” is not one of the choices; known here: { $known }
document-mistake-twice = is given twice
document-mistake-wrong-kind = must be { $wanted }, not { $found }
document-mistake-empty = is empty; give { $wanted } or leave it out
document-mistake-wrong-length = must be { $wanted }, but has { $n }
document-mistake-other = cannot be read: { $log }

document-wanted-number = a number
document-wanted-whole-number = a whole number
document-wanted-count = a whole number, 0 or more
document-wanted-whole-number-within = a whole number from { $low } to { $high }
document-wanted-text = a text
document-wanted-yes-no = true or false
document-wanted-list = a list [ … ]
document-wanted-list-of = a list of { $n }
document-wanted-object = an object { "{" } … { "}" }
document-wanted-choice = one of the choices, as a text or an object
document-wanted-name = a name as a text
document-wanted-null = an empty value
document-wanted-other = { $log }

document-found-null = an empty value
document-found-list = a list
document-found-object = an object
document-found-text = the text “{ $text }”
document-found-value = { $text }

not-json-empty = it is empty
not-json-too-short = it ends too early
not-json-value = a value is missing or misspelled. Texts are in double quotes; numbers and the words true and false are not
not-json-colon = a colon is missing after a name
not-json-comma-in-list = a comma or the end of a list is missing
not-json-comma-in-object = a comma or the end of an object is missing
not-json-name = a name must be in double quotes
not-json-trailing-comma = a comma must not be before the end of a list or an object
not-json-more = there is more text after the end of the document
not-json-control = a text holds a line break or a tab. Write \n or \t
not-json-escape = a text holds a backslash that is not part of an escape. Write \\
not-json-hex-escape = an escape \u… is not complete
not-json-number = a number is misspelled
not-json-too-large = a number is too large
not-json-not-utf8 = the text is not UTF-8
not-json-too-deep = lists and objects are nested more than 128 deep
