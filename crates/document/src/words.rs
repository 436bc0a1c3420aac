//! What a reader says, in plain words. It names types of the programming language; people know numbers, texts and lists.
//!
//! The phrases on the left are those of `serde` 1 and `serde_json` 1; one that is not known here is passed on as it is, and
//! the tests hold the known ones against what the libraries really say.

/// What is wrong with a document that is JSON, and the name of the field beside which it belongs.
pub(crate) fn of_data(said: &str) -> (Option<String>, String) {
    if let Some(rest) = said.strip_prefix("missing field ") {
        let name = rest.trim_matches('`').to_owned();
        return (Some(name), "is missing".to_owned());
    }
    if let Some(rest) = said.strip_prefix("unknown field ") {
        let (name, known) = named(rest);
        return (Some(name.clone()), format!("unknown field `{name}`; {known}"));
    }
    if let Some(rest) = said.strip_prefix("unknown variant ") {
        let (name, known) = named(rest);
        return (None, format!("“{name}” is not one of the choices; {known}"));
    }
    if let Some(rest) = said.strip_prefix("duplicate field ") {
        let name = rest.trim_matches('`').to_owned();
        return (Some(name), "is given twice".to_owned());
    }
    if said.starts_with("data did not match any variant") {
        return (None, "has none of the forms that are possible here".to_owned());
    }
    if let Some(rest) = said.strip_prefix("invalid length ")
        && let Some((found, wanted)) = rest.split_once(", expected ")
    {
        return (None, format!("must be {}, but has {found}", wanted_words(wanted)));
    }
    let rest = said.strip_prefix("invalid type: ").or_else(|| said.strip_prefix("invalid value: "));
    if let Some((found, wanted)) = rest.and_then(|r| r.rsplit_once(", expected ")) {
        return (None, format!("must be {}, not {}", wanted_words(wanted), found_words(found)));
    }
    (None, said.to_owned())
}

/// A name and what is known instead: `` `colour`, expected one of `a`, `b` ``.
fn named(rest: &str) -> (String, String) {
    // The name itself may hold anything, a comma too: what follows it begins at the last of these.
    let split = rest.rsplit_once(", expected ").or_else(|| rest.rsplit_once(", there are "));
    let (name, known) = split.unwrap_or((rest, ""));
    let mut known: Vec<&str> = known.split('`').skip(1).step_by(2).collect();
    known.dedup();
    let known = if known.is_empty() {
        "there are no fields here".to_owned()
    } else {
        format!("known here: {}", known.join(", "))
    };
    (name.trim_matches('`').to_owned(), known)
}

/// What must be there.
fn wanted_words(wanted: &str) -> String {
    let plain = match wanted {
        "f64" | "f32" => "a number",
        "i8" => "a whole number from -128 to 127",
        "i16" => "a whole number from -32768 to 32767",
        "i32" => "a whole number from -2147483648 to 2147483647",
        "i64" | "isize" => "a whole number",
        "u8" => "a whole number from 0 to 255",
        "u16" => "a whole number from 0 to 65535",
        "u32" => "a whole number from 0 to 4294967295",
        "u64" | "usize" => "a whole number, 0 or more",
        "a string" | "str" | "string" | "a borrowed string" => "a text",
        "a boolean" => "true or false",
        "a sequence" => "a list [ … ]",
        "a map" => "an object { … }",
        "variant identifier" | "field identifier" => "a name as a text",
        "unit" => "null",
        other => {
            // `struct Name with 3 elements`, `internally tagged enum Name`, `variant of enum Name`, `enum Name`.
            let object = ["struct ", "internally tagged enum ", "adjacently tagged enum "];
            if object.iter().any(|o| other.starts_with(o)) {
                "an object { … }"
            } else if other.starts_with("enum ") || other.starts_with("variant of enum ") {
                "one of the choices, as a text or an object"
            } else if let Some(count) = counted(other) {
                return format!("a list of {count}");
            } else {
                return other.to_owned();
            }
        }
    };
    plain.to_owned()
}

/// The count in `a tuple of size 2`, `an array of length 2`, `tuple struct X with 2 elements`.
fn counted(wanted: &str) -> Option<&str> {
    let tuple =
        wanted.starts_with("a tuple") || wanted.starts_with("tuple ") || wanted.starts_with("an array of length");
    tuple.then(|| wanted.split(' ').find(|w| w.bytes().all(|b| b.is_ascii_digit())))?
}

/// What is there instead.
fn found_words(found: &str) -> String {
    match found {
        "null" | "unit value" => return "null".to_owned(),
        "sequence" => return "a list".to_owned(),
        "map" => return "an object".to_owned(),
        _ => {}
    }
    if let Some(text) = found.strip_prefix("string ") {
        // Quoted and escaped as the reader writes it.
        let text = serde_json::from_str::<String>(text).unwrap_or_else(|_| text.trim_matches('"').to_owned());
        return format!("the text “{}”", shortened(&text));
    }
    let figure = found.split('`').nth(1);
    match figure {
        Some(figure) if found.starts_with("boolean") => figure.to_owned(),
        Some(figure) => figure.to_owned(),
        None => found.to_owned(),
    }
}

/// A long text is not repeated whole.
fn shortened(text: &str) -> String {
    const MOST: usize = 60;
    if text.chars().count() > MOST { text.chars().take(MOST).chain("…".chars()).collect() } else { text.to_owned() }
}

/// What is wrong with a text that is not JSON.
pub(crate) fn of_syntax(said: &str) -> String {
    let plain = match said {
        "expected value" | "expected ident" => {
            "a value is missing or misspelled. Texts stand in double quotes; the words are true, false and null"
        }
        "expected `:`" => "a colon is missing after a name",
        "expected `,` or `]`" => "a comma or the end of a list is missing",
        "expected `,` or `}`" => "a comma or the end of an object is missing",
        "expected `\"`" | "key must be a string" => "a name must stand in double quotes",
        "trailing comma" => "a comma must not stand before the end of a list or an object",
        "trailing characters" => "there is more text after the end of the document",
        "control character (\\u0000-\\u001F) found while parsing a string" => {
            "a text holds a line break or a tab. Write \\n or \\t"
        }
        "invalid escape" => "a text holds a backslash that is not part of an escape. Write \\\\",
        "invalid number" => "a number is misspelled",
        "number out of range" => "a number is too large",
        "invalid unicode code point" => "the text is not UTF-8",
        "unexpected end of hex escape" | "lone leading surrogate in hex escape" => "an escape \\u… is not complete",
        "recursion limit exceeded" => "lists and objects are nested more than 128 deep",
        other if other.starts_with("EOF") => "it ends too early",
        other => other,
    };
    plain.to_owned()
}
