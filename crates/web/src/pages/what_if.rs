//! What if a mass were another: sliders that move the beam, without touching the job.

use super::club_beam::piece_name;
use super::entries::plain_number;
use bench::beam::BeamPart;
use bench::beam::Moved;
use bench::beam::what_if;
use look::{Button, ButtonKind, button, hidden};
use maud::{Markup, html};
use trade::kind::Role;
use words::Words;

/// Which masses can be tried: role, field, how far either way in grams, step.
const TRIED: [(Role, &str, f64); 3] =
    [(Role::Head, "head_g", 6.0), (Role::TipWeight, "tip_g", 9.0), (Role::Grip, "grip_g", 10.0)];

/// Heavier than any piece of a club; a putter's head has about 400 g (common practice, no source).
const PIECE_MAX_G: f64 = 1000.0;

/// The masses that are tried, as they stand in the address.
#[derive(Debug, Clone, Default)]
pub(super) struct WhatIf(Vec<(Role, f64)>);

impl WhatIf {
    /// From the fields of an address; what cannot be the mass of a piece of a club is left out.
    pub fn of(pairs: &[(String, String)]) -> Self {
        let given = |field: &str| {
            let typed = pairs.iter().find(|(k, _)| k == field).and_then(|(_, v)| plain_number(v).ok());
            typed.filter(|g| (0.0..=PIECE_MAX_G).contains(g))
        };
        Self(TRIED.iter().filter_map(|(role, field, _)| given(field).map(|g| (*role, g))).collect())
    }

    pub fn is_tried(&self) -> bool {
        !self.0.is_empty()
    }

    /// Hangs them on the beam.
    pub fn hang(&self, pieces: &mut Vec<BeamPart>) -> Moved {
        what_if(pieces, &self.0)
    }
}

/// The sliders of a club; `pieces` are those of the job itself.
pub(super) fn sliders(w: &Words, tried: &WhatIf, action: &str, step: &str, beam: &str, pieces: &[BeamPart]) -> Markup {
    html! {
        details.what-if open[tried.is_tried()] {
            summary { (w.text("beam-what-if")) }
            form method="get" action=(action) data-what-if=(beam) {
                (hidden("step", step))
                @for (role, field, reach) in TRIED {
                    @let own = pieces.iter().find(|p| p.role == role).map(|p| p.mass_g);
                    @if let Some(own) = own.or((role == Role::TipWeight).then_some(0.0)) {
                        @let value = tried.0.iter().find(|(r, _)| *r == role).map_or(own, |(_, g)| *g);
                        @let low = if role == Role::TipWeight { 0.0 } else { (own - reach).max(0.0) };
                        @let high = if role == Role::TipWeight { reach.max(own) } else { own + reach };
                        @let id = format!("what-if-{field}");
                        div.slider {
                            label for=(id) { (piece_name(w, role)) }
                            input #(id) type="range" name=(field) min=(format!("{low:.1}")) max=(format!("{high:.1}")) step="0.1" value=(format!("{value:.1}"));
                            output for=(id) { (w.mass(value)) }
                        }
                    }
                }
                div.actions {
                    (button(&Button { label: &w.text("beam-show"), kind: ButtonKind::Quiet, ..Button::default() }))
                    @if tried.is_tried() { a.button.quiet href=(format!("{action}?step={step}")) { (w.text("beam-as-planned")) } }
                }
            }
        }
    }
}
