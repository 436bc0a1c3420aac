//! Why a text is not JSON (RFC 8259). The reader only tells where it stopped; this looks for the reason.

use crate::NotJson;

/// Lists and objects within each other that are read at most, as the reader has it.
const DEEPEST: usize = 128;

/// Why a text is not JSON; [`NotJson::Value`] where nothing of it is known.
pub(crate) fn reason(text: &[u8]) -> NotJson {
    if text.trim_ascii().is_empty() {
        return NotJson::Empty;
    }
    let mut scan = Scan { text, at: 0 };
    match scan.value(0) {
        Err(reason) => reason,
        Ok(()) => {
            scan.space();
            if scan.at < text.len() { NotJson::More } else { NotJson::Value }
        }
    }
}

struct Scan<'a> {
    text: &'a [u8],
    at: usize,
}

impl Scan<'_> {
    fn peek(&self) -> Option<u8> {
        self.text.get(self.at).copied()
    }

    fn space(&mut self) {
        while matches!(self.peek(), Some(b' ' | b'\t' | b'\n' | b'\r')) {
            self.at += 1;
        }
    }

    /// The next character that is no space.
    fn next(&mut self) -> Result<u8, NotJson> {
        self.space();
        self.peek().ok_or(NotJson::TooShort)
    }

    fn value(&mut self, depth: usize) -> Result<(), NotJson> {
        if depth >= DEEPEST {
            return Err(NotJson::TooDeep);
        }
        match self.next()? {
            b'{' => self.entries(depth, b'}', NotJson::CommaInObject, Self::field),
            b'[' => self.entries(depth, b']', NotJson::CommaInList, Self::value),
            b'"' => self.string(),
            b'-' | b'0'..=b'9' => self.number(),
            b't' => self.word(b"true"),
            b'f' => self.word(b"false"),
            b'n' => self.word(b"null"),
            _ => Err(NotJson::Value),
        }
    }

    fn entries(
        &mut self,
        depth: usize,
        end: u8,
        comma: NotJson,
        entry: fn(&mut Self, usize) -> Result<(), NotJson>,
    ) -> Result<(), NotJson> {
        self.at += 1;
        if self.next()? == end {
            self.at += 1;
            return Ok(());
        }
        loop {
            entry(self, depth + 1)?;
            match self.next()? {
                b',' => self.at += 1,
                found if found == end => {
                    self.at += 1;
                    return Ok(());
                }
                _ => return Err(comma),
            }
            if self.next()? == end {
                return Err(NotJson::TrailingComma);
            }
        }
    }

    fn field(&mut self, depth: usize) -> Result<(), NotJson> {
        if self.next()? != b'"' {
            return Err(NotJson::Name);
        }
        self.string()?;
        if self.next()? != b':' {
            return Err(NotJson::Colon);
        }
        self.at += 1;
        self.value(depth)
    }

    fn word(&mut self, word: &[u8]) -> Result<(), NotJson> {
        let rest = &self.text[self.at..];
        if rest.starts_with(word) {
            self.at += word.len();
            return Ok(());
        }
        Err(if word.starts_with(rest) { NotJson::TooShort } else { NotJson::Value })
    }

    fn string(&mut self) -> Result<(), NotJson> {
        self.at += 1;
        let start = self.at;
        loop {
            match self.peek().ok_or(NotJson::TooShort)? {
                b'"' => break,
                b'\\' => self.escape()?,
                0..=0x1f => return Err(NotJson::Control),
                _ => self.at += 1,
            }
        }
        if std::str::from_utf8(&self.text[start..self.at]).is_err() {
            return Err(NotJson::NotUtf8);
        }
        self.at += 1;
        Ok(())
    }

    fn escape(&mut self) -> Result<(), NotJson> {
        self.at += 1;
        match self.peek().ok_or(NotJson::TooShort)? {
            b'"' | b'\\' | b'/' | b'b' | b'f' | b'n' | b'r' | b't' => self.at += 1,
            b'u' => {
                let code = self.code()?;
                // The first half of a pair needs its second (RFC 8259, 7).
                if (0xd800..0xdc00).contains(&code) {
                    if self.text[self.at..].starts_with(b"\\u") {
                        self.at += 1;
                        if !(0xdc00..0xe000).contains(&self.code()?) {
                            return Err(NotJson::HexEscape);
                        }
                    } else {
                        return Err(NotJson::HexEscape);
                    }
                } else if (0xdc00..0xe000).contains(&code) {
                    return Err(NotJson::HexEscape);
                }
            }
            _ => return Err(NotJson::Escape),
        }
        Ok(())
    }

    /// Four digits after `u`.
    fn code(&mut self) -> Result<u32, NotJson> {
        let digits = self.text.get(self.at + 1..self.at + 5).ok_or(NotJson::TooShort)?;
        let digits = std::str::from_utf8(digits).map_err(|_| NotJson::HexEscape)?;
        if !digits.bytes().all(|b| b.is_ascii_hexdigit()) {
            return Err(NotJson::HexEscape);
        }
        self.at += 5;
        u32::from_str_radix(digits, 16).map_err(|_| NotJson::HexEscape)
    }

    fn number(&mut self) -> Result<(), NotJson> {
        let start = self.at;
        if self.peek() == Some(b'-') {
            self.at += 1;
        }
        let leading_zero = self.peek() == Some(b'0');
        let whole = self.digits()?;
        if leading_zero && whole > 1 {
            return Err(NotJson::Number);
        }
        if self.peek() == Some(b'.') {
            self.at += 1;
            self.digits()?;
        }
        if matches!(self.peek(), Some(b'e' | b'E')) {
            self.at += 1;
            if matches!(self.peek(), Some(b'+' | b'-')) {
                self.at += 1;
            }
            self.digits()?;
        }
        let text = std::str::from_utf8(&self.text[start..self.at]).unwrap_or_default();
        if text.parse::<f64>().is_ok_and(f64::is_finite) { Ok(()) } else { Err(NotJson::TooLarge) }
    }

    fn digits(&mut self) -> Result<usize, NotJson> {
        let start = self.at;
        while matches!(self.peek(), Some(b'0'..=b'9')) {
            self.at += 1;
        }
        match (self.at - start, self.peek()) {
            (0, None) => Err(NotJson::TooShort),
            (0, Some(_)) => Err(NotJson::Number),
            (count, _) => Ok(count),
        }
    }
}
