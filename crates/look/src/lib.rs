//! The look of every page: frame, components, pictures and icons as plain functions from plain views to markup.
//!
//! Nothing here knows the workshop's types, the store or a route's handler: a page fills a view struct with texts and
//! figures and gets markup back. What has words or units of its own takes the reader's [`words::Words`] first. Colours and
//! sizes live in `assets/setwright.css`; what moves lives in small modules beside it, and every page works without them.

pub mod assets;
pub mod beam;
pub mod bench;
pub mod blocks;
pub mod calc_pictures;
pub mod check_chart;
pub mod choice;
mod clubs;
mod colours;
pub mod forms;
pub mod frame;
pub mod funnel;
pub mod gallery;
pub mod heap;
pub mod icons;
pub mod label;
pub mod layout;
pub mod life;
mod outlook;
pub mod print;
mod rich;
mod scripts;
pub mod set_drawing;
mod steps;
mod term;
pub mod trace;

pub use beam::{BeamPiece, BeamView, ClubShape, PieceKind, beam};
pub use bench::{
    Ask, BenchBody, CauseLine, Decision, GridRow, LiveBar, ask, bench_body, causes, decision, live_bar, offer,
    set_grid, verdict,
};
pub use blocks::{
    Action, Cell, Column, Figure, Tab, Table, Tone, actions, card, caution, clock, columns, definitions, empty_state,
    figure, figures, notice_block, section, table, table_of_alike, tabs, tag, titled_card,
};
pub use check_chart::{CheckChartView, CheckMark, check_chart};
pub use choice::{ChoicePoint, choice_picture};
pub use clubs::{ClubChip, ClubState, club_mark, club_row};
pub use forms::{
    Button, ButtonKind, Choice, Field, Select, button, check, field, file_field, hidden, keypad_hints, link_button,
    radios, request_key, search_bar, select, text_area,
};
pub use frame::{Clock, FooterLink, Nav, Notice, PageFrame, Tablet, page};
pub use funnel::{FunnelStage, FunnelView, funnel};
pub use heap::{HeapView, heap};
pub use icons::{Icon, icon};
pub use label::{LabelPaper, PartLabel, label_document, label_page, label_picture, label_svg};
pub use life::{LifePoint, LifeView, life};
pub use outlook::{OutlookKind, OutlookLine, OutlookView, outlook};
pub use print::{CardSize, JobCard, job_card, qr_code, qr_in_terminal};
pub use rich::rich;
pub use set_drawing::{DrawnClub, set_drawing, whole_and_fraction};
pub use steps::{Step, StepState, step_line};
pub use term::{meaning_of_term, with_terms};
pub use trace::{TracePoint, TraceView, trace};
