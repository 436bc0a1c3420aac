//! Which clubs a short sheet can name: the numbers of the set's head models in their order.

use crate::short_sheet::words::{Atom, Phrase, Word};
use crate::short_sheet::{ExpandContext, KnownClubs, ShortError, WordFault};
use trade::club_name::ClubName;
use trade::head::{HeadModel, HeadNumber};
use trade::kind::ClubKind;

/// One number of one head model, with its place in the order of the set.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seat<'a> {
    pub head: &'a HeadModel,
    pub number: &'a HeadNumber,
    /// Place in the order of all models.
    pub place: usize,
}

impl Seat<'_> {
    /// The club as a figure of a fact.
    pub(super) fn name(&self) -> ClubName {
        ClubName::of(self.head.club_kind, &self.number.number)
    }

    /// Irons and wedges are one family: a range may run from one to the other.
    pub(crate) const fn family(&self) -> u8 {
        family(self.head.club_kind)
    }

    /// Whether it counts as a wedge for "wedges +2 points".
    pub(super) fn is_wedge(&self) -> bool {
        self.head.club_kind == ClubKind::Wedge
            || (self.head.club_kind == ClubKind::Iron
                && matches!(canonical(&self.number.number).as_str(), "G" | "S" | "L" | "U"))
    }
}

pub(crate) const fn family(kind: ClubKind) -> u8 {
    match kind {
        ClubKind::Wood => 0,
        ClubKind::Hybrid => 1,
        ClubKind::Iron | ClubKind::Wedge => 2,
        ClubKind::Putter => 3,
    }
}

/// One spelling for the letters that name the same club.
pub(crate) fn canonical(number: &str) -> String {
    let upper = number.to_uppercase();
    match upper.as_str() {
        "PW" => "P".into(),
        "SW" => "S".into(),
        "GW" | "A" | "AW" => "G".into(),
        "LW" => "L".into(),
        "UW" => "U".into(),
        _ => upper,
    }
}

/// All numbers that a set can have, in its order.
pub(super) struct Roster<'a> {
    seats: Vec<Seat<'a>>,
}

impl<'a> Roster<'a> {
    pub(super) fn of(ctx: &ExpandContext<'a>) -> Result<Self, ShortError> {
        let mut heads = Vec::new();
        for code in &ctx.models.heads {
            let head = ctx.library.head(code).map_err(|e| ShortError::Models { what: e.refusal() })?;
            heads.push(head);
        }
        if heads.is_empty() {
            return Err(ShortError::NoHeadModel);
        }
        heads.sort_by_key(|h| h.club_kind);
        let numbers = heads.iter().flat_map(|&head| head.numbers.iter().map(move |number| (head, number)));
        Ok(Self { seats: numbers.enumerate().map(|(place, (head, number))| Seat { head, number, place }).collect() })
    }

    pub(super) fn numbers(&self) -> Vec<&'a str> {
        self.seats.iter().map(|s| s.number.number.as_str()).collect()
    }

    /// The seats that an atom can mean: spelled exactly so, or else by the letter's other spelling.
    pub(super) fn find(&self, atom: &Atom) -> Vec<Seat<'a>> {
        let of_kind = |s: &&Seat<'a>| atom.kind.is_none_or(|k| k == s.head.club_kind);
        let exact: Vec<_> = self
            .seats
            .iter()
            .filter(of_kind)
            .filter(|s| s.number.number.eq_ignore_ascii_case(&atom.number))
            .copied()
            .collect();
        if !exact.is_empty() {
            return exact;
        }
        let wanted = canonical(&atom.number);
        self.seats.iter().filter(of_kind).filter(|s| canonical(&s.number.number) == wanted).copied().collect()
    }

    pub(super) fn known(&self) -> Vec<KnownClubs> {
        let mut by_model: Vec<(&str, Vec<String>)> = Vec::new();
        for seat in &self.seats {
            match by_model.last_mut().filter(|(code, _)| *code == seat.head.code) {
                Some((_, numbers)) => numbers.push(seat.number.number.clone()),
                None => by_model.push((&seat.head.code, vec![seat.number.number.clone()])),
            }
        }
        let known = |(code, numbers): (&str, _)| KnownClubs::Model { code: code.to_owned(), numbers };
        by_model.into_iter().map(known).collect()
    }

    /// The seats that a phrase names.
    pub(super) fn named(&self, phrase: &Phrase, word: &Word) -> Result<Vec<Seat<'a>>, ShortError> {
        let fail = |what: WordFault| ShortError::word(&phrase.text, phrase.at, what);
        match word {
            Word::Several(words) => {
                let mut all = Vec::new();
                for word in words {
                    all.extend(self.named(phrase, word)?);
                }
                Ok(all)
            }
            Word::Kind(kind) => {
                let all: Vec<_> = self.seats.iter().filter(|s| s.head.club_kind == *kind).copied().collect();
                if all.is_empty() {
                    Err(fail(WordFault::NoModelOfKind { kind: *kind, known: self.known() }))
                } else {
                    Ok(all)
                }
            }
            Word::Clubs(from, to) => {
                let starts = self.find(from);
                let ends = to.as_ref().map(|to| self.find(to));
                for (atom, found) in [(Some(from), Some(&starts)), (to.as_ref(), ends.as_ref())] {
                    if let (Some(atom), Some([])) = (atom, found.map(Vec::as_slice)) {
                        return Err(fail(WordFault::NoSuchClub { number: atom.number.clone(), known: self.known() }));
                    }
                }
                let ends = ends.unwrap_or_else(|| starts.clone());
                let pairs: Vec<_> = starts
                    .iter()
                    .flat_map(|a| ends.iter().map(move |b| (*a, *b)))
                    .filter(|(a, b)| a.family() == b.family() && (to.is_some() || a.place == b.place))
                    .collect();
                match pairs.as_slice() {
                    [(a, b)] if a.place <= b.place => Ok(self.seats[a.place..=b.place].to_vec()),
                    [_] => Err(fail(WordFault::Backwards)),
                    [] => Err(fail(WordFault::DifferentKinds)),
                    _ => Err(fail(WordFault::Several { known: self.known() })),
                }
            }
            _ => Ok(Vec::new()),
        }
    }
}
