//! The one-club screen of the bench: its pictures, its one decision, its readings.

use super::bench::{View, chips, club_name, next_club, short_name};
use super::club_beam::club_beam;
use super::open::{Override, open_touches, override_part};
use super::step_says::step_says;
use super::{PageError, say, what_if};
use app::AppError;
use app::bench::AtBench;
use app::job::JobFile;
use bench::belief::Believed;
use bench::belief::Finish;
use bench::cause::Telling;
use bench::chance::{Chance, Odds};
use bench::club_state::AskState;
use bench::club_state::ClubState;
use bench::club_state::StepState;
use bench::club_state::StepStatus;
use bench::glue::{Gate, glued_from};
use bench::meaning::{NextSays, Tone as Said};
use bench::offer::Measure;
use bench::open_point::OpenClub;
use bench::remedy::Remedy;
use bench::target::Fit;
use look::{
    BenchBody, Button, ButtonKind, CauseLine, Decision, Field, FunnelStage, FunnelView, Icon, OutlookKind, OutlookLine,
    OutlookView, Step as StepMark, StepState as StepMarkState, Tone, bench_body, button, causes, check, club_row,
    decision, field, funnel, hidden, keypad_hints, link_button, offer, outlook, request_key, rich, section, step_line,
    verdict,
};
use maud::{Markup, html};
use trade::action::Action;
use trade::caution::CautionSays;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::Reading;
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
        Ok(html! { (self.steps(w)) (bench_body(&BenchBody {
            clubs: club_row(w,
                &chips(w, self.file, self.states, &self.step.key, Some(self.state.slot)),
                &format!("/bench/{}/grid/{}", self.file.job.number, self.step.key),
            ),
            beam: self.beam(w, pieces),
            decision: self.decision(w, step_state)?,
            outlook: self.outlook_part(w, step_state, if_read)?,
            below: html! {
                @if self.advised().is_some() { (self.offer_part(w)) }
                (self.remedy_part(w)) (self.readings(w, believed))
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

    /// The remedy that the meaning of the last reading advises: the first of all.
    fn advised(&self) -> Option<&Remedy> {
        let next = self.said.meaning.as_ref().map(|meaning| &meaning.next)?;
        let advised = matches!(next, NextSays::Remedy { .. } | NextSays::RatherOut { .. });
        self.said.remedies.first().filter(|_| advised)
    }

    /// Where the club finishes: as it stands, once all that is to come is read, and with the first advice.
    fn lines(&self, w: &Words, if_read: Option<(usize, f64)>) -> Markup {
        let Some(finish) = self.state.finish else { return html! {} };
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

    fn step_state(&self) -> Option<&StepState> {
        self.state.steps.iter().find(|s| s.key == self.step.key)
    }

    fn at(&self, slot: i64, step: &str) -> String {
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

    /// What may be behind a doubted reading of this club, and the field for what would tell.
    fn doubt(&self, w: &Words) -> Markup {
        let Some(meaning) = self.said.meaning.as_ref() else { return html! {} };
        if let Some(over_set) = meaning.over_set.as_ref().filter(|_| meaning.causes.is_empty()) {
            return html! { p.hint { (w.sentence(over_set)) } };
        }
        if meaning.causes.is_empty() {
            return html! {};
        }
        let said: Vec<[String; 3]> = meaning
            .causes
            .iter()
            .take(3)
            .map(|c| [w.tell(&Odds::of(c.probability)), w.tell(&c.fact), w.tell(&c.what_to_do)])
            .collect();
        let lines: Vec<CauseLine<'_>> =
            said.iter().map(|[odds, words, to_do]| CauseLine { odds, words, to_do }).collect();
        let order = meaning.telling.as_ref().map_or_else(String::new, |t| w.tell(&t.fact));
        causes(w, &lines, &order, &meaning.telling.as_ref().map_or_else(|| html! {}, |t| self.telling(w, t)))
    }

    fn telling(&self, w: &Words, telling: &Telling) -> Markup {
        self.extra_entry(w, telling.what, &telling.step, &telling.on, telling.again)
    }

    /// One more measurement that is worth it, and "not again in this job"; none beside a doubt, which comes first.
    fn offer_part(&self, w: &Words) -> Markup {
        let doubted = self.state.steps.iter().flat_map(|s| &s.asks).any(|a| a.doubted);
        let bundle = &self.said.offers;
        let first = bundle.offers.first().or_else(|| bundle.to_learn.first());
        let Some(offered) = first.filter(|_| !doubted) else { return self.settle_part(w) };
        // What it brings by itself is not said: measurements are worth more together.
        let more = bundle.worth.as_ref().filter(|_| bundle.offers.len() > 1);
        let more = more.map(|worth| text!(w, "offer-bundle-part", n = bundle.offers.len() as i64, worth = worth));
        let covers = |step: &&Step| offered.on.iter().all(|role| step.on.contains(role));
        let step =
            if covers(&self.step) { self.step } else { self.file.job.steps.iter().find(covers).unwrap_or(self.step) };
        let again = offered.measure == Measure::Again
            || offered.what == What::ReferenceSwingWeight
            || offered.what == What::CheckWeight;
        let decline = format!("/bench/{}/{}/decline", self.file.job.number, self.state.slot);
        offer(
            &w.tell(&offered.fact),
            &html! {
                @if let Some(more) = &more { p.small { (more) } }
                (self.extra_entry(w, offered.what, &step.key, &offered.on, again))
                form.inline method="post" action=(decline) {
                    (hidden("measure", offered.measure.key())) (hidden("step", &self.step.key))
                    (button(&Button { label: &w.text("offer-decline"), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            },
        )
    }

    /// What settles whether a finished club is in, with its entry; none where it is the club itself, whose entry is there.
    fn settle_part(&self, w: &Words) -> Markup {
        let next = self.said.meaning.as_ref().map(|meaning| &meaning.next);
        let Some(NextSays::Settle { reach }) = next else { return html! {} };
        let known = reach.what().filter(|what| *what != What::SwingWeight);
        known.map_or_else(
            || html! {},
            |what| offer(&w.sentence(reach), &self.extra_entry(w, what, &self.step.key, &[], true)),
        )
    }

    /// An entry for something that the step does not ask by itself.
    fn extra_entry(&self, w: &Words, what: What, step: &str, on: &[Role], again: bool) -> Markup {
        let key = what.key();
        let on_step = self.file.job.step(step).map_or(&[][..], |s| &s.on);
        // What the step says is on and was not, at this club: the same boxes as those of the step, not ticked.
        let off = on_step.iter().filter(|r| !on.is_empty() && !on.contains(r));
        let elsewhere = !self.step.asks.contains(&what);
        let typed = self.view.typed.get(key).filter(|_| elsewhere).cloned().unwrap_or_default();
        if what.is_look() {
            return self.look_entry(w, what, step);
        }
        html! {
            form.entry-row method="post" action={ "/bench/" (self.file.job.number) "/" (self.state.slot) } data-keep=(club_name(w, self.club)) {
                (hidden("step", step))
                (self.shown(step))
                @if again { (hidden(&format!("again-{key}"), "1")) }
                @for role in off { (hidden(&format!("asked-{}", role.key()), "1")) }
                (field(&Field {
                    name: &format!("read-{key}"),
                    id: &format!("tell-{key}"),
                    label: &text!(w, "bench-entry", what = what),
                    value: &typed,
                    error: self.view.wrong.as_deref().filter(|_| !typed.is_empty()),
                    inputmode: if what == What::SwingWeight { "text" } else { "decimal" },
                    unit: &say::unit_hint(w, what),
                    ..Field::default()
                }))
                (button(&Button { label: &w.text("bench-keep"), kind: ButtonKind::Quiet, ..Button::default() }))
            }
        }
    }

    /// What an entry says of the screen that it was typed on: the version of the club and its readings at the step.
    fn shown(&self, step: &str) -> Markup {
        let standing = self.believed.standing();
        let of_step = standing.iter().filter(|r| r.club == self.club.id && r.step == step);
        let seen: Vec<&str> = of_step.map(|r| r.id.as_str()).collect();
        html! {
            (hidden("version", &self.state.version.to_string()))
            (hidden("seen", &seen.join(" ")))
            (request_key(&app::request_key()))
        }
    }

    /// The two answers of a look, each a button.
    fn look_entry(&self, w: &Words, what: What, step: &str) -> Markup {
        let key = what.key();
        html! {
            div.actions { @for (answer, label) in [("yes", "reading-yes"), ("no", "reading-no")] {
                form.inline method="post" action={ "/bench/" (self.file.job.number) "/" (self.state.slot) } data-keep=(club_name(w, self.club)) {
                    (hidden("step", step))
                    (self.shown(step))
                    (hidden(&format!("again-{key}"), "1"))
                    (hidden(&format!("read-{key}"), answer))
                    (button(&Button { label: &words::capital(&w.text(label)), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            } }
        }
    }

    fn entry(&self, w: &Words, state: Option<&StepState>) -> Markup {
        let Some(state) = state else { return html! {} };
        if !state.gate.is_open() {
            return self.waits(w, state);
        }
        if self.step.glues {
            let glued = state.status == StepStatus::Done;
            return html! {
                @if glued { p { (rich!(w, "bench-glued", |_, inner| html! { a href="/glue" { (inner) } })) } }
                @else {
                    (self.open_part(w))
                    (link_button(&format!("/glue/new?job={}", self.file.job.number), &w.text("bench-mix"), ButtonKind::Primary, Some(Icon::Glue), "g"))
                }
            };
        }
        let next = self.next_club(w);
        html! {
            (super::scale_check::scale_words(w, self.file, &self.step.asks, self.today))
            form.asks method="post" action={ "/bench/" (self.file.job.number) "/" (self.state.slot) } data-keep=(club_name(w, self.club)) data-pad {
                (hidden("step", &self.step.key))
                (self.shown(&self.step.key))
                @let only_done = self.step.asks == [What::Done];
                (self.open_part(w))
                div.fields.of-2[state.asks.len() == 2].of-3[state.asks.len() > 2] { @for (i, ask) in state.asks.iter().enumerate() { (self.ask(w, i, ask)) } }
                (self.toggles(w))
                div.keep-row {
                    (button(&Button {
                        label: &w.text(if only_done { "bench-done" } else { "bench-keep" }),
                        keys: if only_done { "Enter" } else { "" },
                        big: true,
                        ..Button::default()
                    }))
                    @if let Some((slot, number)) = next {
                        (link_button(&self.at(slot, &self.step.key), &text!(w, "bench-next", number = number), ButtonKind::Quiet, Some(Icon::Forward), "n"))
                    }
                }
                @if self.view.kept { (keypad_hints(&[("Enter", w.text("bench-next-club"))])) }
            }
        }
    }

    /// What is open on this club before a step that cannot be undone, and the reason for going on with it all the same; how
    /// many other clubs have something open, too.
    fn open_part(&self, w: &Words) -> Markup {
        let asked = |club: &&OpenClub| club.passed.is_none();
        let others = self.open.iter().filter(asked).filter(|club| club.slot != self.state.slot).count();
        let Some(club) = self.open.iter().find(|club| club.slot == self.state.slot) else { return html! {} };
        let grid = format!("/bench/{}/grid/{}", self.file.job.number, self.step.key);
        html! {
            div.open-here {
                p { strong { (w.text("bench-open-here")) }
                    @if others > 0 { " " a href=(grid) { (text!(w, "bench-open-others", n = others as i64)) } } }
                div.open-points { (open_touches(w, self.file.job.number, club)) }
                @if club.passed.is_none() && !self.step.glues {
                    (field(&Field {
                        name: "reason",
                        label: &w.text("bench-open-reason"),
                        placeholder: &w.text("bench-open-reason"),
                        value: self.view.typed.get("reason").map_or("", String::as_str),
                        required: true,
                        ..Field::default()
                    }))
                }
            }
        }
    }

    /// What is expected of one quantity, over its entry.
    fn ask(&self, w: &Words, index: usize, ask: &AskState) -> Markup {
        let key = ask.what.key();
        let name = format!("read-{key}");
        if ask.what == What::Done {
            return hidden(&name, "done");
        }
        let typed = self.view.typed.get(key).cloned().unwrap_or_default();
        let hint = held_against(w, ask);
        let wrong = self.view.wrong.as_deref().filter(|_| !typed.is_empty() || index == 0);
        let entry = field(&Field {
            name: &name,
            label: &text!(w, "bench-entry", what = ask.what),
            value: &typed,
            hint: &hint,
            error: wrong.filter(|_| index == self.view.wrong_index(&self.step.asks)),
            inputmode: if ask.what == What::SwingWeight { "text" } else { "decimal" },
            unit: &say::unit_hint(w, ask.what),
            autofocus: index == 0 || wrong.is_some(),
            big: true,
            ..Field::default()
        });
        look::ask(&look::Ask { expected: &say::expected(w, ask), note: &say::expected_note(w, ask), entry })
    }

    /// Whether a missing ferrule would not be doubted at this reading: the forecast before gluing is too wide to see it, so
    /// that it must be looked at.
    fn ferrule_hides(&self) -> bool {
        let expected = self
            .state
            .steps
            .iter()
            .find(|s| s.key == self.step.key)
            .and_then(|s| s.asks.iter().find(|a| a.what == What::SwingWeight && a.reading.is_none())?.expected);
        let dry = !self.step.on.contains(&Role::Adhesive);
        dry && expected.is_some_and(|e| e.band > bench::cause::FERRULE_SEEN_BAND_POINTS)
    }

    /// What may be on the club or not at this reading, offered where the plan has it.
    fn toggles(&self, w: &Words) -> Markup {
        let reads_whole =
            self.step.asks.iter().any(|a| matches!(a, What::SwingWeight | What::TotalMass | What::BalancePoint));
        let has = |kind| self.club.plan.as_ref().is_some_and(|p| p.part(kind).is_some());
        let read = self.step_state().is_some_and(|s| s.asks.iter().all(|a| a.reading.is_some()));
        let mut offered = Vec::new();
        if reads_whole && !read {
            // Once the joint is glued the ferrule is on for good.
            if self.step.on.contains(&Role::Ferrule)
                && !self.step.on.contains(&Role::Adhesive)
                && has(PartKind::Ferrule)
            {
                offered.push(Role::Ferrule);
            }
            if self.step.on.contains(&Role::Solvent) {
                offered.push(Role::Solvent);
            }
        }
        html! {
            @for role in offered {
                (hidden(&format!("asked-{}", role.key()), "1"))
                @let label = match role {
                    Role::Solvent => "bench-solvent-wet",
                    _ if self.ferrule_hides() => "bench-ferrule-look",
                    _ => "bench-ferrule-on",
                };
                (check(&format!("on-{}", role.key()), "1", &w.text(label), true))
            }
        }
    }

    fn waits(&self, w: &Words, state: &StepState) -> Markup {
        let words = match &state.gate {
            Gate::Waits { strength, until } => {
                text!(w, "bench-waits", strength = strength, until_at = until)
            }
            _ => w.text("bench-not-glued"),
        };
        html! {
            p.waits { strong { (words) } }
            @if matches!(state.gate, Gate::NotGlued) {
                (link_button(&format!("/glue/new?job={}", self.file.job.number), &w.text("bench-mix"), ButtonKind::Primary, Some(Icon::Glue), "g"))
            }
            (override_part(w, &Override {
                file: self.file,
                step: self.step,
                batch: glued_from(&self.file.batches, &self.club.id),
                action: format!("/bench/{}/{}/let-pass", self.file.job.number, self.state.slot),
                more: &[],
            }))
        }
    }

    fn next_club(&self, w: &Words) -> Option<(i64, String)> {
        next_club(self.file, self.state.slot).map(|c| (c.slot, short_name(w, c)))
    }

    fn remedy_part(&self, w: &Words) -> Markup {
        if self.said.remedies.is_empty() {
            return html! {};
        }
        section(
            &w.text("remedy-title"),
            &html! {},
            &html! {
                details {
                    summary { (w.text("remedy-list")) }
                    @if let Some(chance) = self.said.chance_ahead {
                        p.small { (text!(w, "remedy-left", chance = Chance::of(chance))) ". " (w.text("remedy-conditions")) }
                    }
                    ul.plain.remedies { @for remedy in few_of_each(&self.said.remedies) {
                        li { (self.remedy(w, remedy, &w.tell(&remedy.fact))) }
                    } }
                }
            },
        )
    }

    /// One remedy: a part is put into the plan, anything else is entered as added once it is done.
    fn remedy(&self, w: &Words, remedy: &Remedy, said: &str) -> Markup {
        let action = format!("/bench/{}/{}", self.file.job.number, self.state.slot);
        let version = self.state.version.to_string();
        let (to, label) =
            if remedy.kind.is_some() { ("swap", w.text("remedy-take")) } else { ("extra", w.text("remedy-done")) };
        let plain =
            matches!(remedy.action, Action::PullHead | Action::Cut | Action::ButtExtension | Action::LowerHandTape);
        if plain {
            return html! { span { (said) } };
        }
        html! {
            form.inline method="post" action=(format!("{action}/{to}")) {
                @if let Some(kind) = remedy.kind { (hidden("kind", kind.key())) (hidden("code", &remedy.code.to_string())) }
                @else {
                    (hidden("action", remedy.action.key()))
                    (hidden("mass_g", &remedy.more_g.to_string()))
                }
                (hidden("step", &self.step.key)) (hidden("version", &version))
                span { (said) }
                (button(&Button { label: &label, kind: ButtonKind::Quiet, ..Button::default() }))
            }
        }
    }

    fn readings(&self, w: &Words, believed: &Believed<'_>) -> Markup {
        let standing = believed.standing();
        let mine: Vec<&Reading> = self.file.readings.iter().filter(|r| r.club == self.club.id).collect();
        if mine.is_empty() {
            return html! {};
        }
        let last_standing = mine.iter().rev().find(|r| standing.iter().any(|s| s.id == r.id)).map(|r| r.id.clone());
        let base = format!("/bench/{}/{}", self.file.job.number, self.state.slot);
        section(
            &w.text("bench-readings"),
            &html! {},
            &html! {
                ul.plain.readings { @for reading in mine.iter().rev() {
                    @let stands = standing.iter().any(|s| s.id == reading.id);
                    @let doubted = stands && believed.is_doubted(&reading.id);
                    li.struck[!stands] {
                        @let read = say::as_read(w, reading.what, reading.value, &reading.typed);
                        span { (rich!(w, "bench-reading", |_, inner| html! { strong { (inner) } },
                            step = self.step_label(&reading.step), what = reading.what, read = read)) }
                        @if let Some(why) = &reading.taken_back { " " span { (text!(w, "bench-taken-back", why = why)) } }
                        @else if !stands { " " span { (w.text("bench-read-again")) } }
                        @if let Some(f) = &reading.forecast {
                            @let expected = say::forecast(w, reading.what, f.value, f.band);
                            @let off = say::difference(w, reading.what, reading.value - f.value);
                            " " span.small { (text!(w, "bench-expected", expected = expected, off = off)) }
                        }
                        @if doubted { " " (look::tag(Tone::Doubt, &w.text("bench-doubted"))) }
                        @if reading.insisted { " " (look::tag(Tone::Care, &w.text("bench-insisted"))) }
                        " " span.small { (text!(w, "bench-read-by", by = reading.by, read_at = reading.at)) }
                        @if stands {
                            form.inline method="post" action={ (base) "/take-back" } {
                                (hidden("reading", reading.id.as_str())) (hidden("step", &reading.step))
                                @let key = if Some(&reading.id) == last_standing.as_ref() { "z" } else { "" };
                                (button(&Button { label: &w.text("bench-take-back"), kind: ButtonKind::Quiet, icon: Some(Icon::Undo), keys: key, ..Button::default() }))
                            }
                        }
                        @if doubted {
                            details { summary { (w.text("bench-insist")) }
                                form.inline method="post" action={ (base) "/insist" } {
                                    (hidden("reading", reading.id.as_str())) (hidden("step", &reading.step))
                                    (field(&Field { name: "why", label: &w.text("bench-why"), required: true, ..Field::default() }))
                                    (button(&Button { label: &w.text("bench-count"), kind: ButtonKind::Danger, ..Button::default() }))
                                }
                            }
                        }
                    }
                } }
            },
        )
    }

    fn step_label(&self, key: &str) -> String {
        self.file.job.step(key).map_or_else(|| key.to_owned(), |s| s.label.clone())
    }
}

/// What an entry is held against, as far as the figure over it does not say it: what was read and how far off that was, what
/// the sheet asks and whether that is met.
fn held_against(w: &Words, ask: &AskState) -> String {
    let mut said = Vec::new();
    if let Some(reading) = &ask.reading {
        let read = say::value(w, ask.what, reading.value);
        said.push(match &ask.expected {
            Some(e) => {
                let off = say::difference(w, ask.what, reading.value - e.value);
                text!(w, "bench-was-read-off", read = read, off = off)
            }
            None => text!(w, "bench-was-read", read = read),
        });
    }
    if let Some(target) = ask.target.as_ref().filter(|_| ask.expected.is_some()) {
        said.push(say::asked(w, ask.what, target));
    }
    if ask.fit == Some(Fit::Off) {
        said.push(w.tell(&Fit::Off));
    }
    said.join(" · ")
}

/// The best eight, and of one kind no more than three: the fourth head that is as good as the third helps nobody choose.
fn few_of_each(remedies: &[Remedy]) -> Vec<&Remedy> {
    let mut chosen: Vec<&Remedy> = Vec::new();
    for remedy in remedies {
        if chosen.len() < 8 && chosen.iter().filter(|other| other.action == remedy.action).count() < 3 {
            chosen.push(remedy);
        }
    }
    chosen
}
