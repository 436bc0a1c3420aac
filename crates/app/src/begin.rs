//! The first set of a new shop: from three answers and one line of a sheet to parts that can be planned.
//!
//! Nothing of it is kept beside the shop: what is done already is read off models, sheets, parts and jobs, so that a page that
//! was left, loaded again or opened on another tablet goes on where the shop is. Whatever is sent twice is kept once.

use crate::sheet::{Approve, ShortSheet};
use crate::told::{SkipTold, TellShop};
use crate::usual::KeepUsual;
use crate::weigh_in::{WeighIn, WeighedIn};
use crate::{App, AppError, load_library};
use desk::needs::{Key, wishes};
use desk::short_sheet::{KindChoice, SetModels};
use jiff::civil::Date;
use serde::Serialize;
use trade::fit::head_takes_shaft;
use trade::head::HeadModel;
use trade::id::{PartId, SheetId};
use trade::kind::Hand;
use trade::model::usual::{UsualName, usual_model, usual_models};
use trade::model::{Library, Model, PartKind};
use trade::part::Part;
use trade::sheet::{SetRule, Sheet};

/// What a new shop is asked.
#[derive(Debug, Clone)]
pub struct BeginShop {
    /// Step of the balance scale's display.
    pub balance_step_points: f64,
    /// Step of the mass scale's display.
    pub mass_step_g: f64,
    /// Codes of adhesive, tape and grip: models of the shop or usual ones.
    pub adhesive: String,
    /// The tape under the grips.
    pub tape: String,
    /// The grip that the builder's figure is about.
    pub grip: String,
    /// What the builder knows of joints, grips and wraps; empty where nothing.
    pub told: Vec<TellShop>,
    /// Who.
    pub by: String,
}

/// One set in a line.
#[derive(Debug, Clone)]
pub struct BeginSet {
    /// Who the clubs are for.
    pub player: String,
    /// The player's hand.
    pub hand: Hand,
    /// When the set is due.
    pub due: Date,
    /// Code of the head model; of a usual one the model for the player's hand is taken.
    pub head: String,
    /// Code of the shaft model; none: a usual one that fits the head.
    pub shaft: Option<String>,
    /// Code of the grip model.
    pub grip: String,
    /// The sheet, written short.
    pub written: String,
}

/// Parts of one model and number that a sheet asks for and the stock does not have.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PieceToWeigh {
    /// What sort of part it is: a head, a shaft or a grip.
    pub kind: PartKind,
    /// Code of its model.
    pub model: String,
    /// Name of its model.
    pub name: String,
    /// Its number, where it has one.
    pub number: Option<String>,
    /// By which it is kept once, however often it is sent.
    pub request_key: String,
}

/// A mass that was typed for a piece.
#[derive(Debug, Clone)]
pub struct PieceWeighed {
    /// Which piece.
    pub piece: PieceToWeigh,
    /// Its mass as typed.
    pub mass: String,
    /// It is right though it is in question.
    pub sure: bool,
}

impl App {
    /// Takes in what a new shop answers: scales, the models that joints and grips are made of, what the builder knows of them.
    /// Where he knows nothing he is not asked again.
    ///
    /// # Errors
    /// A figure that cannot be; a model that is not there; what the store says.
    pub async fn begin_shop(
        &self,
        begin: &BeginShop,
        name: impl Fn(&UsualName) -> String + Send,
    ) -> Result<(), AppError> {
        self.keep_where_usual(&[&begin.adhesive, &begin.tape, &begin.grip], name).await?;
        let mut shop = self.shop().await?;
        shop.balance_scale.display_step = begin.balance_step_points;
        shop.mass_scale.display_step = begin.mass_step_g;
        shop.adhesive = Some(begin.adhesive.clone());
        shop.tape = Some(begin.tape.clone());
        self.save_shop(&shop).await?;
        if begin.told.is_empty() {
            return self.skip_told(&SkipTold { by: begin.by.clone() }).await;
        }
        self.tell_shop(&begin.told).await
    }

    /// Saves the sheet of the first set with the models that it needs. The same sheet again is not saved twice.
    ///
    /// # Errors
    /// A line that cannot be read; a number that the heads do not have; what the store says.
    pub async fn begin_set(
        &self,
        begin: &BeginSet,
        name: impl Fn(&UsualName) -> String + Send + Copy,
    ) -> Result<SheetId, AppError> {
        let head = for_hand(&begin.head, begin.hand);
        self.keep_where_usual(&[&head, &begin.grip], name).await?;
        let library: Library = self.models(None).await?.into_iter().collect();
        let head_model = library.head(&head)?;
        let shaft = begin.shaft.clone().or_else(|| usual_shaft(head_model)).unwrap_or_default();
        let mut small: Vec<&str> = of_usual(PartKind::TipWeight).map(Model::code).collect();
        small.push(&shaft);
        let ferrule = match library.get(&shaft).or_else(|| usual_model(&shaft).map(|usual| &usual.model)) {
            Some(Model::Shaft(model)) => ferrule_for(&library, model.tip_diameter_mm),
            _ => None,
        };
        small.extend(ferrule.as_deref());
        self.keep_where_usual(&small, name).await?;
        let every = |model: String| vec![KindChoice { club_kind: None, model }];
        let short = ShortSheet {
            written: begin.written.clone(),
            models: SetModels {
                heads: vec![head],
                shafts: every(shaft),
                grips: every(begin.grip.clone()),
                ferrules: ferrule.map(every).unwrap_or_default(),
                adhesive: None,
                tape: None,
            },
            rule: SetRule::AsWritten,
            reference: None,
            customer: None,
        };
        let expanded = self.expand_sheet(&short).await?;
        let sheet = Sheet {
            player: begin.player.clone(),
            customer: None,
            due: begin.due,
            hand: begin.hand,
            note: String::new(),
            rule: short.rule,
            written: short.written,
            reference: None,
            quote: Vec::new(),
            clubs: expanded.into_iter().map(|one| one.club).collect(),
        };
        for line in self.sheets().await?.iter().filter(|line| line.job.is_none() && line.player == sheet.player) {
            if self.sheet(&line.id).await?.sheet == sheet {
                return Ok(line.id.clone());
            }
        }
        Ok(self.save_sheet(&sheet).await?.id)
    }

    /// What a sheet asks for of heads, shafts and grips and the stock does not have, club by club.
    ///
    /// # Errors
    /// No such sheet; what the store says.
    pub async fn pieces_to_weigh(&self, id: &SheetId) -> Result<Vec<PieceToWeigh>, AppError> {
        let sheet = self.sheet(id).await?.sheet;
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let free = Self::free_parts_for(&mut tx, sheet.customer).await?;
        let mut wanted: Vec<(Key, i64)> = Vec::new();
        for wish in sheet.clubs.iter().flat_map(|club| wishes(club, &library)) {
            if !matches!(wish.0, PartKind::Head | PartKind::Shaft | PartKind::Grip) {
                continue;
            }
            match wanted.iter_mut().find(|(of, _)| *of == wish) {
                Some((_, count)) => *count += 1,
                None => wanted.push((wish, 1)),
            }
        }
        let mut pieces = Vec::new();
        for (place, ((kind, model, number), count)) in (1_i64..).zip(wanted) {
            let mut missing = count - in_stock(&free, kind, &model, number.as_deref());
            let mut at = 0;
            while missing > 0 {
                at += 1;
                let request_key = request_key(id, kind, number.as_deref(), (place, at));
                // A key by which a part was kept once keeps no other.
                if tx.part(&PartId::from(request_key.as_str())).await?.is_some() {
                    continue;
                }
                missing -= 1;
                let name = library.get(&model).map_or(model.as_str(), Model::name).to_owned();
                pieces.push(PieceToWeigh { kind, model: model.clone(), name, number: number.clone(), request_key });
            }
        }
        Ok(pieces)
    }

    /// Weighs in what was typed, one piece after the other, and says what became of each that was not kept.
    ///
    /// # Errors
    /// No such model; what the store says. A mass that cannot be used or is in question is an answer and no error.
    pub async fn begin_parts(&self, weighed: &[PieceWeighed], by: &str) -> Result<Vec<(String, WeighedIn)>, AppError> {
        let mut open = Vec::new();
        for PieceWeighed { piece, mass, sure } in weighed {
            let new = WeighIn {
                model: piece.model.clone(),
                number: piece.number.clone().unwrap_or_default(),
                mass: mass.clone(),
                sure: if *sure { mass.clone() } else { String::new() },
                request_key: piece.request_key.clone(),
                by: by.to_owned(),
                ..WeighIn::default()
            };
            let answer = self.weigh_in(&new).await?;
            if !matches!(answer, WeighedIn::Kept(_)) {
                open.push((piece.request_key.clone(), answer));
            }
        }
        Ok(open)
    }

    /// Puts the small things of a set into the stock by count: ferrules and the weights of the tray, enough for this set. What
    /// the stock has of a model already stays as it is.
    ///
    /// # Errors
    /// What the store says.
    pub async fn begin_small_parts(&self, id: &SheetId, by: &str) -> Result<(), AppError> {
        let sheet = self.sheet(id).await?.sheet;
        let library: Library = self.models(None).await?.into_iter().collect();
        let ferrules = sheet.clubs.iter().filter_map(|club| club.ferrule_model.clone());
        let weights = library.of_kind(PartKind::TipWeight).map(|model| model.code().to_owned());
        let mut models: Vec<String> = ferrules.chain(weights).collect();
        models.sort();
        models.dedup();
        for model in models {
            let query = crate::stock::PartQuery { model: Some(model.clone()), limit: Some(1), ..<_>::default() };
            if self.parts(&query).await?.1 > 0 {
                continue;
            }
            let new = WeighIn {
                code: model.clone(),
                code_proposed: true,
                model,
                count: sheet.clubs.len().to_string(),
                by: by.to_owned(),
                ..WeighIn::default()
            };
            self.weigh_in(&new).await?;
        }
        Ok(())
    }

    /// The job of a sheet: made now where nothing stops it, or the one that it has already.
    ///
    /// # Errors
    /// A finding that must be put right first; what the store says.
    pub async fn begin_job(&self, id: &SheetId, by: &str) -> Result<i64, AppError> {
        if let Some(job) = self.sheet(id).await?.job {
            return Ok(job);
        }
        Ok(self.approve_sheet(id, &Approve { steps: None, by: by.to_owned() }).await?.number)
    }

    /// Keeps those of the codes that are usual models.
    async fn keep_where_usual(
        &self,
        codes: &[&str],
        name: impl Fn(&UsualName) -> String + Send,
    ) -> Result<(), AppError> {
        let codes: Vec<String> =
            codes.iter().filter(|code| usual_model(code).is_some()).map(|code| (*code).to_owned()).collect();
        if codes.is_empty() {
            return Ok(());
        }
        self.keep_usual(&KeepUsual { codes }, name).await.map(drop)
    }
}

fn of_usual(kind: PartKind) -> impl Iterator<Item = &'static Model> {
    usual_models().iter().map(|usual| &usual.model).filter(move |model| model.kind() == kind)
}

/// The usual head for a hand; another head stays what it is.
fn for_hand(code: &str, hand: Hand) -> String {
    let left = format!("{code}-LEFT");
    match hand {
        Hand::Left if usual_model(code).is_some() && usual_model(&left).is_some() => left,
        _ => code.to_owned(),
    }
}

/// The usual shaft in the middle of those that go into a head and have its numbers.
fn usual_shaft(head: &HeadModel) -> Option<String> {
    let fits = |model: &&Model| {
        let Model::Shaft(shaft) = model else { return false };
        let all = head.numbers.iter().all(|number| {
            let needed_mm = number.chart.length_mm - number.bore_to_ground_mm;
            shaft.blank(&number.number).is_some_and(|blank| blank.length_mm >= needed_mm)
        });
        // Parallel shafts have one blank for all; which heads they are for shows in their tip trim.
        let meant = shaft.tip_trim.is_empty()
            || head.numbers.iter().all(|n| shaft.tip_trim.iter().any(|t| t.number.eq_ignore_ascii_case(&n.number)));
        head_takes_shaft(head, None, shaft) && all && meant
    };
    let of_kind: Vec<&Model> = of_usual(PartKind::Shaft).filter(fits).collect();
    // Steel stands first in the file; its middle class is the second.
    of_kind.get(1).or_else(|| of_kind.first()).map(|model| model.code().to_owned())
}

/// A ferrule for a tip: the shop's own, or a usual one.
fn ferrule_for(library: &Library, tip_mm: f64) -> Option<String> {
    let fits =
        |model: &&Model| matches!(model, Model::Ferrule(ferrule) if trade::ferrule::ferrule_fits(ferrule, tip_mm));
    let own = library.of_kind(PartKind::Ferrule).find(fits);
    own.or_else(|| of_usual(PartKind::Ferrule).find(fits)).map(|model| model.code().to_owned())
}

/// The key of a piece: the sheet, what it is, its place among what the sheet asks for and which of the equal ones it is.
fn request_key(id: &SheetId, kind: PartKind, number: Option<&str>, (place, at): (i64, i64)) -> String {
    let plain = |text: &str, most: usize| -> String {
        text.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').take(most).collect()
    };
    let (sheet, number) = (plain(id.as_str(), 36), plain(number.unwrap_or_default(), 8));
    format!("{sheet}-{}{number}-{place}-{at}", plain(kind.key(), 8))
}

fn in_stock(free: &[Part], kind: PartKind, model: &str, number: Option<&str>) -> i64 {
    let same = |part: &&Part| {
        part.kind == kind
            && part.model == model
            && match (part.number.as_deref(), number) {
                (Some(a), Some(b)) => a.eq_ignore_ascii_case(b),
                (a, b) => a.is_none() && b.is_none(),
            }
    };
    free.iter().filter(same).map(|part| part.count.unwrap_or(1)).sum()
}
