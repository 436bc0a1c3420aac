//! The entries of the one-club screen: what is expected of each, what is on the club, and what is open before them.

use super::bench::{club_name, next_club, short_name};
use super::bench_screen::Screen;
use super::open::{Override, open_touches, override_part};
use super::say;
use bench::club_state::AskState;
use bench::club_state::StepState;
use bench::club_state::StepStatus;
use bench::glue::{Gate, glued_from};
use bench::open_point::OpenClub;
use bench::target::Fit;
use look::{
    Button, ButtonKind, Field, Icon, button, check, field, hidden, keypad_hints, link_button, request_key, rich,
};
use maud::{Markup, html};
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::What;
use words::{Words, text};

impl Screen<'_> {
    /// An entry for something that the step does not ask by itself.
    pub(super) fn extra_entry(&self, w: &Words, what: What, step: &str, on: &[Role], again: bool) -> Markup {
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

    pub(super) fn entry(&self, w: &Words, state: Option<&StepState>) -> Markup {
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
            error: wrong.filter(|_| index == self.view.wrong_index(&self.step.asks, &self.file.shop.pendulum)),
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
