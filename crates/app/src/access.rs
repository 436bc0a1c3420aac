//! Who may come in from outside this machine: tablets let in by six digits that are shown, programs with a key of their own.

use crate::need::need_name;
use crate::{App, AppError};
use bench::seal::hex;
use getrandom::fill;
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use store::{DoorCode, Tx};
use trade::access::{
    AccessFault, AccessKey, CODE_LASTS_S, KeyHolder, KeyRole, LONGEST_NAME, MOST_DAYS, MOST_WRONG, MOST_WRONG_FROM_ONE,
    WRONG_WITHIN_S,
};
use trade::event_kind::EventKind;
use utoipa::ToSchema;

/// Who is to be let in.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LetTabletIn {
    /// What the shop calls the tablet: the bench that it stands at, or whose it is.
    pub name: String,
    /// What it may do.
    pub role: KeyRole,
    /// Who lets it in.
    pub by: String,
}

/// Six digits to type on the tablet.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ShownCode {
    /// The digits.
    pub code: String,
    /// What the shop will call the tablet.
    pub name: String,
    /// What it may do.
    pub role: KeyRole,
    /// Until when they can be typed, once.
    #[schema(value_type = String, format = DateTime)]
    pub ends_at: Timestamp,
}

/// Digits as they were typed.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TypedCode {
    /// The six digits; what stands between them does not count.
    pub code: String,
}

/// A program that is to have a key.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GiveProgramKey {
    /// What the shop calls the program.
    pub name: String,
    /// What it may do.
    pub role: KeyRole,
    /// For how many days from now.
    #[schema(minimum = 1, maximum = 3660)]
    pub days: i64,
    /// Who gives it.
    pub by: String,
}

/// Who takes a key away.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WithdrawKey {
    /// Their name.
    pub by: String,
}

/// A key that was given, with its secret, which is shown this once and kept nowhere.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct GivenKey {
    /// Whose it is, what it allows, when it ends.
    #[serde(flatten)]
    pub key: AccessKey,
    /// The secret, as it is sent with each request: `Authorization: Bearer` and this text.
    pub secret: String,
}

/// How old the note of a key's last use may become before it is renewed.
const USE_NOTED_EACH: SignedDuration = SignedDuration::from_mins(10);

/// What a secret begins with, so that a text that was copied to a wrong place is recognised as one.
const SECRET_BEGINS: &str = "setwright_";

impl App {
    /// Shows six digits that let one tablet in.
    ///
    /// # Errors
    /// A tablet without a name; nobody named who lets it in; what the store says.
    pub async fn let_tablet_in(&self, wanted: &LetTabletIn) -> Result<ShownCode, AppError> {
        need_name(&wanted.by)?;
        let name = sound_name(&wanted.name)?;
        if wanted.role == KeyRole::Calendar {
            return Err(AppError::invalid(AccessFault::CalendarTablet));
        }
        let now = self.now();
        let mut tx = self.store.write().await?;
        // Digits that are shown to two at once would let the first in as the second.
        let code = loop {
            let code = six_digits()?;
            if tx.door_code(&hash(&code), now).await?.is_none() {
                break code;
            }
        };
        let ends_at = after(now, SignedDuration::from_secs(CODE_LASTS_S));
        let row = DoorCode { number: 0, name, role: wanted.role, shown_by: wanted.by.clone(), ends_at };
        tx.insert_door_code(&row, &hash(&code)).await?;
        let note = serde_json::json!({ "name": row.name, "role": row.role });
        self.log(&mut tx, None, None, EventKind::DoorCodeShown, &wanted.by, note).await?;
        tx.commit().await?;
        Ok(ShownCode { code, name: row.name, role: row.role, ends_at })
    }

    /// Lets a tablet in by the digits that were typed on it. `from` is the address in the network that they came from.
    ///
    /// # Errors
    /// Digits that are not shown, or were used already, or whose time is over; too many wrong ones within ten minutes, from
    /// there or from everywhere; what the store says.
    pub async fn come_in(&self, typed: &TypedCode, from: &str) -> Result<GivenKey, AppError> {
        let code: String = typed.code.chars().filter(char::is_ascii_digit).collect();
        let now = self.now();
        let mut tx = self.store.write().await?;
        let wrong = wrong_of_late(&mut tx, now).await?;
        let from_here = wrong.iter().filter(|other| other.as_str() == from).count();
        if from_here >= MOST_WRONG_FROM_ONE || wrong.len() >= MOST_WRONG {
            return Err(AppError::forbidden(AccessFault::TooManyWrong { wait_min: WRONG_WITHIN_S / 60 }));
        }
        let Some(shown) = tx.door_code(&hash(&code), now).await? else {
            let note = serde_json::json!({ "from": from });
            self.log(&mut tx, None, None, EventKind::DoorCodeWrong, "", note).await?;
            if wrong.len() + 1 >= MOST_WRONG {
                tx.end_door_codes(now).await?;
            }
            tx.commit().await?;
            tracing::warn!(from, "wrong digits at the door");
            return Err(AppError::forbidden(AccessFault::WrongCode));
        };
        let key = AccessKey {
            used_at: Some(now),
            used_from: Some(from.to_owned()),
            ..new_key(&mut tx, KeyHolder::Tablet, shown.name, shown.role, shown.shown_by, now).await?
        };
        let given = self.keep_key(&mut tx, key).await?;
        tx.spend_door_code(shown.number, given.key.number).await?;
        tx.commit().await?;
        self.tell(None, "keys");
        Ok(given)
    }

    /// Gives a program a key.
    ///
    /// # Errors
    /// A program without a name, no name of whoever gives the key, days out of range; what the store says.
    pub async fn give_program_key(&self, wanted: &GiveProgramKey) -> Result<GivenKey, AppError> {
        need_name(&wanted.by)?;
        let name = sound_name(&wanted.name)?;
        if !(1..=MOST_DAYS).contains(&wanted.days) {
            return Err(AppError::invalid(AccessFault::Days { most: MOST_DAYS }));
        }
        let now = self.now();
        let mut tx = self.store.write().await?;
        let key = AccessKey {
            ends_at: Some(after(now, SignedDuration::from_hours(24 * wanted.days))),
            ..new_key(&mut tx, KeyHolder::Program, name, wanted.role, wanted.by.clone(), now).await?
        };
        let given = self.keep_key(&mut tx, key).await?;
        tx.commit().await?;
        self.tell(None, "keys");
        Ok(given)
    }

    async fn keep_key(&self, tx: &mut Tx, key: AccessKey) -> Result<GivenKey, AppError> {
        let secret = new_secret()?;
        tx.insert_key(&key, &hash(&secret)).await?;
        let note = serde_json::json!({ "key": key.number, "name": key.name, "role": key.role, "holder": key.holder });
        self.log(tx, None, None, EventKind::KeyGiven, &key.given_by, note).await?;
        Ok(GivenKey { key, secret })
    }

    /// Every key that was ever given, the newest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn access_keys(&self) -> Result<Vec<AccessKey>, AppError> {
        Ok(self.store.read().await?.access_keys().await?)
    }

    /// Takes a key away; its holder is out with the next request.
    ///
    /// # Errors
    /// No such key, or one that was taken away before; nobody named; what the store says.
    pub async fn withdraw_key(&self, number: i64, request: &WithdrawKey) -> Result<Vec<AccessKey>, AppError> {
        need_name(&request.by)?;
        let mut tx = self.store.write().await?;
        if !tx.withdraw_key(number, self.now(), &request.by).await? {
            return Err(AppError::NotFound(AccessFault::NoSuchKey { number }.into()));
        }
        let note = serde_json::json!({ "key": number });
        self.log(&mut tx, None, None, EventKind::KeyWithdrawn, &request.by, note).await?;
        tx.commit().await?;
        self.tell(None, "keys");
        self.access_keys().await
    }

    /// The key that a secret belongs to, where it lets its holder in now. `from` is the address that it came from.
    ///
    /// # Errors
    /// What the store says.
    pub async fn key_of(&self, secret: &str, from: &str) -> Result<Option<AccessKey>, AppError> {
        let now = self.now();
        let found = self.store.read().await?.key_of_secret(&hash(secret)).await?;
        let Some(key) = found.filter(|key| key.is_good(now)) else { return Ok(None) };
        let noted = key.used_at.is_some_and(|at| now.duration_since(at) < USE_NOTED_EACH && at <= now);
        if !noted || key.used_from.as_deref() != Some(from) {
            let (app, number, from) = (self.clone(), key.number, from.to_owned());
            // Whoever asked does not wait for a note, and is not refused for one that cannot be written.
            tokio::spawn(async move {
                if let Err(error) = app.note_use(number, now, &from).await {
                    tracing::warn!(%error, number, "the use of a key could not be noted");
                }
            });
        }
        Ok(Some(key))
    }

    async fn note_use(&self, number: i64, at: Timestamp, from: &str) -> Result<(), AppError> {
        let mut tx = self.store.write().await?;
        tx.note_key_used(number, at, from).await?;
        Ok(tx.commit().await?)
    }

    /// Whether a key still lets its holder in.
    ///
    /// # Errors
    /// What the store says.
    pub async fn key_is_good(&self, number: i64) -> Result<bool, AppError> {
        let key = self.store.read().await?.access_key(number).await?;
        Ok(key.is_some_and(|key| key.is_good(self.now())))
    }
}

/// A key with the next number, which has no end yet and was never used.
async fn new_key(
    tx: &mut Tx,
    holder: KeyHolder,
    name: String,
    role: KeyRole,
    given_by: String,
    given_at: Timestamp,
) -> Result<AccessKey, AppError> {
    let number = tx.next_key_number().await?;
    let (ends_at, used_at, used_from, withdrawn_at, withdrawn_by) = (None, None, None, None, None);
    Ok(AccessKey {
        number,
        name,
        holder,
        role,
        given_at,
        given_by,
        ends_at,
        used_at,
        used_from,
        withdrawn_at,
        withdrawn_by,
    })
}

/// The addresses from which wrong digits were typed in the last ten minutes.
async fn wrong_of_late(tx: &mut Tx, now: Timestamp) -> Result<Vec<String>, AppError> {
    let since = after(now, SignedDuration::from_secs(-WRONG_WITHIN_S));
    let most = i64::try_from(MOST_WRONG).unwrap_or(i64::MAX);
    let events = tx.events_of(&EventKind::DoorCodeWrong, most).await?;
    let late = events.into_iter().filter(|event| event.at > since);
    Ok(late.map(|event| event.body["from"].as_str().unwrap_or_default().to_owned()).collect())
}

fn after(now: Timestamp, time: SignedDuration) -> Timestamp {
    now.checked_add(time).unwrap_or(Timestamp::MAX)
}

fn sound_name(name: &str) -> Result<String, AppError> {
    let name = name.trim();
    if name.is_empty() || name.chars().count() > LONGEST_NAME || name.chars().any(char::is_control) {
        return Err(AppError::invalid(AccessFault::Name { most: LONGEST_NAME }));
    }
    Ok(name.to_owned())
}

/// What a secret is recognised by. It is drawn at random and long, so that a quick hash will do; six digits are not, but they
/// are good for five minutes and one use.
fn hash(secret: &str) -> String {
    hex(&Sha256::digest(secret.as_bytes()))
}

fn random<const N: usize>() -> Result<[u8; N], AppError> {
    let mut bytes = [0; N];
    fill(&mut bytes).map_err(|e| AppError::Internal(format!("the system gave no random numbers: {e}")))?;
    Ok(bytes)
}

fn new_secret() -> Result<String, AppError> {
    Ok(format!("{SECRET_BEGINS}{}", hex(&random::<32>()?)))
}

/// Six digits, each number of them as likely as any other.
fn six_digits() -> Result<String, AppError> {
    const OF: u32 = 1_000_000;
    loop {
        let drawn = u32::from_le_bytes(random()?);
        // What would make small numbers likelier is drawn again.
        if drawn < u32::MAX - u32::MAX % OF {
            return Ok(format!("{:06}", drawn % OF));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{hash, new_secret, six_digits};

    /// The hash is that of FIPS 180-4: the example "abc" of NIST's sheet for SHA-256.
    #[test]
    fn a_secret_is_recognised_by_its_sha_256() {
        assert_eq!(hash("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    #[test]
    fn secrets_are_long_and_never_the_same_and_digits_are_six() {
        let (one, other) = (new_secret().expect("random"), new_secret().expect("random"));
        assert!(one != other && one.len() == "setwright_".len() + 64, "{one}");
        for _ in 0..50 {
            let digits = six_digits().expect("random");
            assert!(digits.len() == 6 && digits.bytes().all(|b| b.is_ascii_digit()), "{digits}");
        }
    }
}
