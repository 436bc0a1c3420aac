//! A recall as a list: the clubs that something reached, those still in the shop first, and whom to write to.

use crate::stock_file::to_csv;
use fact::Told;
use serde::Serialize;
use std::collections::BTreeMap;
use trade::club::ClubFigure;
use trade::club_name::ClubName;
use trade::customer::{self, Customer};
use trade::id::ClubCode;
use trade::job::JobState;
use trade::recall::{ClubMark, Reach};
use utoipa::ToSchema;

/// A club of a recall.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct RecalledClub {
    /// What its label or its job card says; by it one club of the recall is chosen: `C12`, `J1-4`.
    pub key: String,
    /// Its own code, once it was handed over; none before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub code: Option<ClubCode>,
    /// Number of the job in which it was reached; none where that was outside of a job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// Place in the tray of that job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slot: Option<i64>,
    /// The state of that job; none for a club that was never in one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub state: Option<JobState>,
    /// Its kind and number, as people call it.
    #[schema(value_type = Told)]
    pub name: ClubName,
    /// Who plays it.
    pub player: String,
    /// Running number of the customer whose it is; none where no customer is noted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub customer: Option<i64>,
    /// Why it is in the recall.
    #[schema(value_type = Vec<Told>)]
    pub reaches: Vec<Reach>,
    /// What was read of it last, one figure of each sort; of a scale's recall, what was read on that scale.
    pub read: Vec<ClubFigure>,
    /// The marks that stand on it.
    pub marks: Vec<ClubMark>,
}

impl RecalledClub {
    /// Whether it can still be stopped: it has not left the shop.
    #[must_use]
    pub fn is_here(&self) -> bool {
        self.state.is_some_and(|state| JobState::UNDER_WAY.contains(&state))
    }
}

/// Somebody who plays clubs of a recall.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct RecalledPlayer {
    /// Their name.
    pub player: String,
    /// Their number among the customers; none where only the name on the sheet is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub customer: Option<i64>,
    /// Where to ring them; empty where nobody noted it.
    pub phone: String,
    /// Where to write to them; empty where nobody noted it.
    pub email: String,
    /// Street and town; empty where nobody noted it.
    pub address: String,
    /// Keys of their clubs in the recall.
    pub clubs: Vec<String>,
    /// How many of them have not left the shop.
    pub here: usize,
}

/// What a recall found.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct RecallList {
    /// What was called back.
    pub of: Told,
    /// The clubs: those still in the shop first, then by player.
    pub clubs: Vec<RecalledClub>,
    /// Whom to write to, by name.
    pub players: Vec<RecalledPlayer>,
}

impl RecallList {
    /// The list of clubs, with the customers whose some of them are.
    #[must_use]
    pub fn new(of: Told, mut clubs: Vec<RecalledClub>, customers: &BTreeMap<i64, Customer>) -> Self {
        clubs.sort_by_cached_key(|club| {
            (!club.is_here(), club.player.to_lowercase(), club.customer, club.job, club.slot, club.key.clone())
        });
        let mut players: BTreeMap<(String, Option<i64>), RecalledPlayer> = BTreeMap::new();
        for club in &clubs {
            let known = club.customer.and_then(|number| customers.get(&number));
            let name = known.map_or(&club.player, |customer| &customer.name);
            let player = players.entry((name.to_lowercase(), club.customer)).or_insert_with(|| RecalledPlayer {
                player: name.clone(),
                customer: club.customer,
                phone: known.map_or_else(String::new, |c| c.phone.clone()),
                email: known.map_or_else(String::new, |c| c.email.clone()),
                address: known.map_or_else(String::new, |c| c.address.clone()),
                clubs: Vec::new(),
                here: 0,
            });
            player.clubs.push(club.key.clone());
            player.here += usize::from(club.is_here());
        }
        Self { of, clubs, players: players.into_values().collect() }
    }

    /// Whom to write to, as a CSV file: a row a player, no cell that a spreadsheet would run.
    #[must_use]
    pub fn addresses_csv(&self) -> String {
        let header = ["customer", "name", "address", "email", "phone", "clubs", "clubs_here", "club_keys"];
        let row = |player: &RecalledPlayer| {
            vec![
                player.customer.map_or_else(String::new, customer::code),
                player.player.clone(),
                player.address.clone(),
                player.email.clone(),
                player.phone.clone(),
                player.clubs.len().to_string(),
                player.here.to_string(),
                player.clubs.join(" "),
            ]
        };
        let header = header.map(str::to_owned).to_vec();
        to_csv(std::iter::once(header).chain(self.players.iter().map(row)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use trade::kind::ClubKind;
    use trade::recall::RecallOf;

    fn club(key: &str, player: &str, customer: Option<i64>, state: JobState) -> RecalledClub {
        RecalledClub {
            key: key.into(),
            code: None,
            job: Some(1),
            slot: Some(1),
            state: Some(state),
            name: ClubName::of(ClubKind::Iron, "7"),
            player: player.into(),
            customer,
            reaches: Vec::new(),
            read: Vec::new(),
            marks: Vec::new(),
        }
    }

    /// Two people of one name are two rows where one of them is a customer; what can still be stopped comes first; a name that
    /// a spreadsheet would run is only a name.
    #[test]
    fn the_list_begins_with_what_can_be_stopped_and_names_each_person_once() {
        let clubs = vec![
            club("C1", "Ada Fenwick", Some(3), JobState::Finished),
            club("C2", "Ada Fenwick", None, JobState::Finished),
            club("J9-1", "Zoë Farrowby", None, JobState::Planned),
            club("C3", "Ada Fenwick", Some(3), JobState::Finished),
        ];
        let ada = Customer { address: "1 High Street\nTown, \"A\"".into(), ..Customer::named("=Ada Fenwick") };
        let list = RecallList::new(RecallOf::Lot { lot: "D".into() }.into(), clubs, &BTreeMap::from([(3, ada)]));
        assert_eq!(list.clubs[0].key, "J9-1");
        assert_eq!(list.players.len(), 3);
        let csv = list.addresses_csv();
        assert!(csv.contains("CU-3,'=Ada Fenwick,\"1 High Street\nTown, \"\"A\"\"\",,,2,0,C1 C3\r\n"), "{csv}");
        assert!(csv.contains(",Zoë Farrowby,,,,1,1,J9-1\r\n"), "{csv}");
    }
}
