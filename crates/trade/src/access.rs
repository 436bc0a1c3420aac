//! Who may come in from outside this machine: keys of tablets and programs, and what each may do.

use crate::kind::closed_list;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// How long the six digits that let a tablet in are good for, seconds. OWASP ASVS 4.0.3, 2.7.2 allows ten minutes at most.
pub const CODE_LASTS_S: i64 = 300;
/// Within which time wrong digits are counted, seconds.
pub const WRONG_WITHIN_S: i64 = 600;
/// Wrong digits from one address, after which it has to wait.
pub const MOST_WRONG_FROM_ONE: usize = 5;
/// Wrong digits from all addresses together, after which every code that is shown ends: twenty guesses at a million.
pub const MOST_WRONG: usize = 20;
/// Most letters of a key's name.
pub const LONGEST_NAME: usize = 60;
/// Longest time that a program's key may be given, days.
pub const MOST_DAYS: i64 = 3660;

closed_list! {
    /// What whoever has a key may do.
    KeyRole {
        /// Everything, keys and the settings of the shop among it.
        Owner = "owner";
        /// The work of the shop: everything but keys, settings, prices and the deletion of customers.
        Builder = "builder";
        /// Look at everything but keys, change nothing.
        Reader = "reader";
        /// Fetch the calendar and nothing else. Its secret stands in the address that a calendar fetches.
        Calendar = "calendar";
    }
}

closed_list! {
    /// Who has a key.
    KeyHolder {
        /// A tablet, phone or computer, let in by six digits.
        Tablet = "tablet";
        /// A program, which was given its key.
        Program = "program";
    }
}

closed_list! {
    /// What is asked of the shop.
    Deed {
        /// Looking, and calculations that keep nothing.
        Look = "look";
        /// Work: readings, plans, stock, orders, sheets.
        Work = "work";
        /// What only the owner does.
        Own = "own";
        /// Fetching the calendar.
        Calendar = "calendar";
    }
}

impl KeyRole {
    /// The roles of people and of programs that work with the shop.
    pub const WORKING: [Self; 3] = [Self::Owner, Self::Builder, Self::Reader];

    /// Whether this role allows a deed.
    #[must_use]
    pub const fn may(self, deed: Deed) -> bool {
        match self {
            Self::Owner => true,
            Self::Builder => matches!(deed, Deed::Look | Deed::Work | Deed::Calendar),
            Self::Reader => matches!(deed, Deed::Look | Deed::Calendar),
            Self::Calendar => matches!(deed, Deed::Calendar),
        }
    }
}

/// A key as people see it. The secret itself is nowhere kept, only what it is recognised by.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct AccessKey {
    /// Running number; never given twice.
    pub number: i64,
    /// What the shop calls the tablet or program.
    pub name: String,
    /// Who has it.
    pub holder: KeyHolder,
    /// What they may do.
    pub role: KeyRole,
    /// When it was given.
    #[schema(value_type = String, format = DateTime)]
    pub given_at: Timestamp,
    /// Who gave it.
    pub given_by: String,
    /// When it ends; a tablet's does not.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub ends_at: Option<Timestamp>,
    /// When it was last used, to some minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub used_at: Option<Timestamp>,
    /// The network address that it was last used from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub used_from: Option<String>,
    /// When it was taken away.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub withdrawn_at: Option<Timestamp>,
    /// Who took it away.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub withdrawn_by: Option<String>,
}

impl AccessKey {
    /// Whether it lets anybody in at a time.
    #[must_use]
    pub fn is_good(&self, now: Timestamp) -> bool {
        self.withdrawn_at.is_none() && self.ends_at.is_none_or(|end| now < end)
    }

    /// When it ends or ended; none while it is good until it is taken away.
    #[must_use]
    pub fn end(&self, now: Timestamp) -> Option<KeyEnd> {
        match (self.withdrawn_at, self.ends_at) {
            (Some(done_at), _) => {
                Some(KeyEnd::Withdrawn { done_at, by: self.withdrawn_by.clone().unwrap_or_default() })
            }
            (None, Some(end_at)) if end_at <= now => Some(KeyEnd::Over { end_at }),
            (None, end) => end.map(|end_at| KeyEnd::Until { end_at }),
        }
    }

    /// Whose it is: a tablet's by its role alone, a program's as one.
    #[must_use]
    pub fn held(&self) -> KeyHeld {
        match self.holder {
            KeyHolder::Program => KeyHeld::Program { role: self.role },
            KeyHolder::Tablet => KeyHeld::Tablet { role: self.role },
        }
    }
}

fact::facts! {
    /// When a key ends or ended.
    pub enum KeyEnd: "key_end" {
        /// It was taken away.
        Withdrawn {
            /// When that was.
            done_at: Timestamp,
            /// Who did it.
            by: String,
        },
        /// Its time is over.
        Over {
            /// When it ended.
            end_at: Timestamp,
        },
        /// It is still good.
        Until {
            /// How long.
            end_at: Timestamp,
        },
    }
}

fact::facts! {
    /// Who holds a key, and as what.
    pub enum KeyHeld: "key_held" {
        /// A tablet, phone or computer.
        Tablet {
            /// What it may do.
            role: KeyRole,
        },
        /// A program.
        Program {
            /// What it may do.
            role: KeyRole,
        },
    }
}

fact::facts! {
    /// Why somebody is not let in, or a key not given.
    pub enum AccessFault: "access_fault" {
        /// Nobody comes in from outside this machine without a key.
        NoKey,
        /// The key that was sent is not known, was taken away or has ended.
        BadKey,
        /// The role of the key does not go so far.
        NotAllowed {
            /// What the key allows.
            role: KeyRole,
        },
        /// The digits are not those that are shown, or their time is over.
        WrongCode,
        /// Too many wrong digits.
        TooManyWrong {
            /// How long nothing is taken from there.
            wait_min: i64,
        },
        /// A key without a name, or with too long a one.
        Name {
            /// Most letters of a name.
            most: usize,
        },
        /// A program's key for no time, or for too long.
        Days {
            /// Most days.
            most: i64,
        },
        /// A tablet was to be let in with a key for the calendar alone.
        CalendarTablet,
        /// There is no key of this number that could be taken away.
        NoSuchKey {
            /// As the list of keys numbers it.
            number: i64,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::{Deed, KeyRole};

    #[test]
    fn each_role_goes_as_far_as_it_says() {
        let may = |role: KeyRole| Deed::ALL.iter().filter(|deed| role.may(**deed)).count();
        assert_eq!(KeyRole::WORKING.map(may), [4, 3, 2]);
        assert!(!KeyRole::Builder.may(Deed::Own) && !KeyRole::Reader.may(Deed::Work));
        assert!(may(KeyRole::Calendar) == 1 && KeyRole::Calendar.may(Deed::Calendar));
    }
}
