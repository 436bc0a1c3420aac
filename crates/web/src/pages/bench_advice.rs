//! What the one-club screen advises: causes of a doubt, measurements that are worth it, remedies.

use super::bench_screen::Screen;
use bench::cause::Telling;
use bench::chance::{Chance, Odds};
use bench::meaning::NextSays;
use bench::offer::Measure;
use bench::remedy::Remedy;
use look::{Button, ButtonKind, CauseLine, button, causes, hidden, offer, section};
use maud::{Markup, html};
use trade::action::Action;
use trade::reading::What;
use trade::step::Step;
use words::{Words, text};

impl Screen<'_> {
    /// The remedy that the meaning of the last reading advises: the first of all.
    pub(super) fn advised(&self) -> Option<&Remedy> {
        let next = self.said.meaning.as_ref().map(|meaning| &meaning.next)?;
        let advised = matches!(next, NextSays::Remedy { .. } | NextSays::RatherOut { .. });
        self.said.remedies.first().filter(|_| advised)
    }

    /// What may be behind a doubted reading of this club, and the field for what would tell.
    pub(super) fn doubt(&self, w: &Words) -> Markup {
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
    pub(super) fn offer_part(&self, w: &Words) -> Markup {
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

    pub(super) fn remedy_part(&self, w: &Words) -> Markup {
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
    pub(super) fn remedy(&self, w: &Words, remedy: &Remedy, said: &str) -> Markup {
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
