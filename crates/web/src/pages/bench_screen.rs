//! The one-club screen of the bench: its pictures, its one decision, its readings.

use super::bench::{View, chips, club_name};
use super::club_beam::club_beam;
use super::step_says::step_says;
use super::{PageError, what_if};
use app::AppError;
use app::bench::AtBench;
use app::job::JobFile;
use bench::belief::Believed;
use bench::belief::Finish;
use bench::chance::Odds;
use bench::club_state::ClubState;
use bench::club_state::StepState;
use bench::club_state::StepStatus;
use bench::meaning::{NextSays, Tone as Said};
use bench::open_point::OpenClub;
use look::{
    BenchBody, Decision, FunnelStage, FunnelView, OutlookKind, OutlookLine, OutlookView, Step as StepMark,
    StepState as StepMarkState, Tone, bench_body, club_row, decision, funnel, outlook, step_line, verdict,
};
use maud::{Markup, html};
use trade::caution::CautionSays;
use trade::job::JobClub;
use trade::reading::What;
use trade::step::Step;
use words::{Words, text};

/// One club at one step, with everything that its screen shows.
pub(super) struct Screen<'a> {
    pub file: &'a JobFile,
    pub believed: &'a Believed<'a>,
    pub club: &'a JobClub,
    pub state: &'a ClubState,
    pub states: &'a [ClubState],
    pub step: &'a Step,
    pub view: &'a View,
    pub said: AtBench,
    /// What is open on the clubs of the job, where the step cannot be undone.
    pub open: Vec<OpenClub>,
    /// The day, for what is said of a scale.
    pub today: jiff::civil::Date,
}

impl Screen<'_> {
    /// The body of the page.
    pub(super) fn body(&self, w: &Words) -> Result<Markup, PageError> {
        let believed = self.believed;
        let pieces = bench::beam::beam_parts(believed, &self.club.id, &self.step.on).map_err(AppError::from)?;
        let action = format!("/bench/{}/{}", self.file.job.number, self.state.slot);
        let beam = format!("beam-{}", self.state.slot);
        let sliders = what_if::sliders(w, &self.view.what_if, &action, &self.step.key, &beam, &pieces);
        let points = believed.funnel(&self.club.id).map_err(AppError::from)?;
        let step_state = self.step_state();
        let ahead = points.iter().filter(|point| point.reading_points.is_none()).count();
        let if_read = points.last().filter(|_| ahead > 0).map(|last| (ahead, last.band_points));
        let marks = self.file.marks.iter().filter(|(club, _)| *club == self.club.id).map(|(_, mark)| mark);
        let marks = super::recall::marks_part(w, marks, &format!("{action}?step={}", self.step.key));
        Ok(html! { (self.steps(w)) (marks) (bench_body(&BenchBody {
            clubs: club_row(w,
                &chips(w, self.file, self.states, &self.step.key, Some(self.state.slot)),
                &format!("/bench/{}/grid/{}", self.file.job.number, self.step.key),
            ),
            beam: self.beam(w, pieces),
            decision: self.decision(w, step_state)?,
            outlook: self.outlook_part(w, step_state, if_read)?,
            below: html! {
                @if self.advised().is_some() { (self.offer_part(w)) }
                (self.remedy_part(w)) (self.inertia_part(w)) (self.grip_part(w)?) (self.readings(w, believed))
                div.columns {
                    details { summary { (w.text("outlook-how")) } (self.funnel(w, points)) }
                    (sliders)
                }
            },
        })) })
    }

    /// What the reading means, what the step says of this club, where the club finishes, line by line, and the first advice; a
    /// doubt comes before all of it.
    fn outlook_part(
        &self,
        w: &Words,
        state: Option<&StepState>,
        if_read: Option<(usize, f64)>,
    ) -> Result<Markup, PageError> {
        let (said, tone) = self.verdict(w, state);
        let doubted = self.said.meaning.as_ref().is_some_and(|meaning| !meaning.causes.is_empty());
        let read = state.is_some_and(|s| s.asks.iter().any(|a| a.what == What::SwingWeight && a.reading.is_some()));
        // What to do comes before the reading, what it means for the finish after it.
        let says = if read {
            html! {}
        } else {
            step_says(w, self.file, self.club, self.state, self.step)?
        };
        let lines = says.0.is_empty();
        Ok(html! {
            (verdict(tone, &said))
            (self.doubt(w))
            @if !doubted {
                (says)
                @if lines { (self.lines(w, if_read)) }
                @match self.advised() {
                    Some(remedy) => div.advice { (self.remedy(w, remedy, &w.tell(remedy.fact.deed()))) }
                    None => (self.offer_part(w))
                }
            }
            @if let Some(caution) = self.step.caution { (look::caution(&w.tell(&CautionSays::from(caution)))) }
        })
    }

    /// Where the club finishes: as it stands, once all that is to come is read, and with the first advice.
    fn lines(&self, w: &Words, if_read: Option<(usize, f64)>) -> Markup {
        let Some(finish) = self.state.finish.and_then(Finish::where_asked) else { return html! {} };
        let line = |kind, label: String, at: &Finish, band_points: f64, chance: Option<f64>| OutlookLine {
            kind,
            label,
            centre_points: at.deviation_points,
            half_band_points: band_points,
            finish: text!(
                w,
                "outlook-finish",
                finish_points = at.swing_weight_points,
                band_points = band_points.max(0.05)
            ),
            chance: chance.map_or_else(String::new, |chance| w.tell(&Odds::of(chance))),
        };
        let advised = self.advised();
        // Beside an advice, the chance that counts what it counts: the readings to come and the grip they will choose.
        let stands = match advised {
            Some(_) => self.said.chance_ahead,
            None => Some(finish.chance),
        };
        let mut lines = vec![line(OutlookKind::Stands, w.text("outlook-stands"), &finish, finish.band_points, stands)];
        if let Some((n, band_points)) = if_read {
            lines.push(line(OutlookKind::IfRead, text!(w, "outlook-if-read", n = n), &finish, band_points, None));
        }
        if let Some(remedy) = advised {
            let (at, chance) = (&remedy.finish, Some(remedy.chance_at_end));
            lines.push(line(OutlookKind::Advised, w.text("outlook-advised"), at, at.band_points, chance));
        }
        outlook(
            w,
            &OutlookView {
                title: w.text("outlook-title"),
                lines,
                target_points: self.club.target.swing_weight_points,
                tolerance_points: finish.tolerance_points,
            },
        )
    }

    pub(super) fn step_state(&self) -> Option<&StepState> {
        self.state.steps.iter().find(|s| s.key == self.step.key)
    }

    pub(super) fn at(&self, slot: i64, step: &str) -> String {
        format!("/bench/{}/{slot}?step={step}", self.file.job.number)
    }

    fn steps(&self, w: &Words) -> Markup {
        let hrefs: Vec<String> = self.state.steps.iter().map(|s| self.at(self.state.slot, &s.key)).collect();
        let marks: Vec<StepMark<'_>> = self
            .state
            .steps
            .iter()
            .zip(&hrefs)
            .map(|(s, href)| StepMark {
                label: &s.label,
                href,
                state: if s.key == self.step.key {
                    StepMarkState::Current
                } else if s.asks.iter().any(|a| a.doubted) {
                    StepMarkState::Doubted
                } else {
                    match s.status {
                        StepStatus::Done => StepMarkState::Done,
                        StepStatus::LeftOut => StepMarkState::Skipped,
                        StepStatus::Open | StepStatus::Begun => StepMarkState::Open,
                    }
                },
            })
            .collect();
        step_line(w, &marks)
    }

    fn beam(&self, w: &Words, mut pieces: Vec<bench::beam::BeamPart>) -> Markup {
        let weighs_club = self.step.asks.contains(&What::SwingWeight);
        let ask = self.step_state().and_then(|s| s.asks.iter().find(|a| a.what == What::SwingWeight));
        let now = ask.and_then(|a| a.reading.as_ref().map(|r| r.value).or(a.expected.as_ref().map(|e| e.value)));
        let moved = self.view.what_if.hang(&mut pieces);
        let now = now.filter(|_| weighs_club).map(|now| now + moved.now_points);
        let finish =
            self.state.finish.map(|f| Finish { swing_weight_points: f.swing_weight_points + moved.finish_points, ..f });
        club_beam(w, self.file, self.club, pieces, now, finish)
    }

    fn funnel(&self, w: &Words, points: Vec<bench::funnel::FunnelPoint>) -> Markup {
        funnel(
            w,
            &FunnelView {
                id: format!("funnel-{}", self.state.slot),
                club: club_name(w, self.club),
                stages: points
                    .into_iter()
                    .map(|p| FunnelStage {
                        label: p.label,
                        centre_points: p.deviation_points,
                        half_band_points: p.band_points,
                        reading_points: p.reading_points,
                        doubted: p.doubted,
                        current: p.step == self.step.key,
                        ahead: p.reading_points.is_none(),
                    })
                    .collect(),
                target_label: w.swing_weight_short(self.club.target.swing_weight_points),
                tolerance_points: self.club.target.tolerances.swing_weight_points,
            },
        )
    }

    fn decision(&self, w: &Words, state: Option<&StepState>) -> Result<Markup, PageError> {
        let heading = text!(w, "bench-decision", club = club_name(w, self.club), step = self.step.label);
        let shift = super::scale_check::shift_words(w, self.believed, &self.step.asks)?;
        Ok(decision(&Decision { heading: &heading, form: html! { (self.entry(w, state)) (shift) } }))
    }

    fn verdict(&self, w: &Words, state: Option<&StepState>) -> (Markup, Tone) {
        let read_here = state.is_some_and(|s| s.asks.iter().any(|a| a.reading.is_some()));
        match &self.said.meaning {
            Some(meaning) if self.view.kept || read_here => {
                // What stands below, a cause or the first advice, is not said twice.
                let next = match &meaning.next {
                    _ if !meaning.causes.is_empty() => String::new(),
                    NextSays::Remedy { .. } => String::new(),
                    NextSays::RatherOut { .. } => w.text("outlook-rather-out"),
                    next => w.tell(next),
                };
                let tone = match meaning.tone {
                    Said::Good => Tone::Good,
                    Said::Act => Tone::Care,
                    Said::Doubt => Tone::Doubt,
                };
                (html! { strong { (w.tell(&meaning.fact)) } " " span.next { (next) } }, tone)
            }
            _ if self.step.say.is_empty() => (html! {}, Tone::Plain),
            _ => (html! { (self.step.say) }, Tone::Plain),
        }
    }
}
