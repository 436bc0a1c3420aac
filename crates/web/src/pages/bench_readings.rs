//! The readings of a club so far, on its screen: each with what was expected of it, to be taken back or insisted on.

use super::bench_screen::Screen;
use super::say;
use bench::belief::Believed;
use look::{Button, ButtonKind, Field, Icon, Tone, button, field, hidden, rich, section};
use maud::{Markup, html};
use trade::reading::Reading;
use words::{Words, text};

impl Screen<'_> {
    pub(super) fn readings(&self, w: &Words, believed: &Believed<'_>) -> Markup {
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
