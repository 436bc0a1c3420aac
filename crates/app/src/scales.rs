//! Scales on a serial line: what each shows now, for every screen.

use crate::{App, AppError};
use instrument::scale::{Heard, LineSaid, Measured, Ports, ScaleEvent, ScaleLine, ScaleSaid, Settler};
use serde::Serialize;
use std::collections::{BTreeMap, VecDeque};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use tokio::sync::broadcast;
use trade::connection::{Connection, Shows};
use utoipa::ToSchema;

/// Lines that a tester shows.
const LINES_KEPT: usize = 30;
/// Values kept for a screen that is slow.
const VALUES_KEPT: usize = 64;
/// Least that counts as a part on the scale: grams, and points since A0 for a club on the balance.
const LEAST_G: f64 = 0.5;
const LEAST_POINTS: f64 = -60.0;

/// A line as the tester shows it.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct HeardLine {
    /// As it came, without its end.
    pub raw: String,
    /// What is read from it, or why it is refused.
    pub read: LineSaid,
    /// Whether it was refused.
    pub refused: bool,
}

/// What a scale shows now.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ScaleNow {
    /// Key of the connection.
    pub scale: String,
    /// What people call it.
    pub name: String,
    /// Whether its figures are masses or swing weights.
    pub shows: Shows,
    /// Whether its port is open.
    pub connected: bool,
    /// What is wrong.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trouble: Option<ScaleSaid>,
    /// The figure: grams or points since A0; none where nothing was read or the scale is overloaded.
    pub figure: Option<f64>,
    /// The figure as people write it: `256.1`, `D2.3`.
    pub text: String,
    /// Whether this value has settled just now: taken once for each part.
    pub taken: bool,
    /// A key of this taking, the same for every screen that hears of it: a part kept under it is kept once. Empty where
    /// nothing was taken.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub take: String,
    /// The last lines, the newest last; left out of the live events.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lines: Vec<HeardLine>,
}

/// The shop's running scales.
#[derive(Debug, Default)]
struct Running {
    /// What it was started with; none before it was started at all.
    connections: Option<Vec<Connection>>,
    ports: Ports,
    now: BTreeMap<String, ScaleNow>,
    lines: BTreeMap<String, VecDeque<HeardLine>>,
}

/// Shared by all clones of the app.
#[derive(Debug, Clone)]
pub(crate) struct Board {
    running: Arc<Mutex<Running>>,
    live: broadcast::Sender<ScaleNow>,
}

impl Board {
    pub fn new() -> Self {
        Self { running: Arc::default(), live: broadcast::channel(VALUES_KEPT).0 }
    }

    fn lock(&self) -> MutexGuard<'_, Running> {
        // What a thread left behind when it panicked is only a picture of a scale.
        self.running.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Whether scales are being heard, and others than these.
    pub fn differs(&self, connections: &[Connection]) -> bool {
        self.lock().connections.as_ref().is_some_and(|running| running != connections)
    }

    fn start(&self, connections: &[Connection], step_g: f64, step_points: f64) {
        let mut ports = Ports::default();
        {
            let mut running = self.lock();
            running.connections = Some(connections.to_vec());
            running.now = connections.iter().map(|c| (c.key.clone(), silent(c))).collect();
            running.lines.clear();
        }
        for connection in connections {
            let board = self.clone();
            let mut settler = match connection.shows {
                Shows::Mass => Settler::with_pan(step_g.max(0.01), LEAST_G),
                Shows::SwingWeight => Settler::new(step_points.max(0.01), LEAST_POINTS),
            };
            ports.start(connection.clone(), move |event| board.hear(event, &mut settler));
        }
        // The old ports stop when they are dropped, outside the lock that they may be waiting for.
        let old = std::mem::replace(&mut self.lock().ports, ports);
        drop(old);
    }

    fn hear(&self, event: ScaleEvent, settler: &mut Settler) {
        let mut running = self.lock();
        let Some(now) = running.now.get_mut(&event.scale) else { return };
        now.taken = false;
        now.take.clear();
        let mut line = None;
        match event.heard {
            Heard::Connected => {
                now.connected = true;
                now.trouble = None;
                settler.forget();
            }
            Heard::Lost { why } => {
                (now.connected, now.figure) = (false, None);
                now.text.clear();
                now.trouble = Some(ScaleSaid::Lost { why });
                settler.forget();
            }
            Heard::Silent => {
                now.figure = None;
                now.text.clear();
                now.trouble = Some(ScaleSaid::Silent);
                settler.forget();
            }
            Heard::Flooding => now.trouble = Some(ScaleSaid::Flooding),
            Heard::Line { raw, read } => {
                let refused = matches!(read, ScaleLine::Refused { .. });
                line = Some(HeardLine { raw, read: read.said(), refused });
                hear_line(now, read, settler, event.at_s);
            }
        }
        let told = now.clone();
        if let Some(line) = line {
            let lines = running.lines.entry(event.scale).or_default();
            if lines.len() == LINES_KEPT {
                lines.pop_front();
            }
            lines.push_back(line);
        }
        drop(running);
        // Nobody listening is no error.
        let _ = self.live.send(told);
    }
}

/// Puts a line into what the scale shows.
fn hear_line(now: &mut ScaleNow, read: ScaleLine, settler: &mut Settler, at_s: f64) {
    match read {
        ScaleLine::Value { measured, settled } => {
            now.trouble = None;
            now.figure = Some(measured.figure());
            now.text = text(measured);
            now.taken = settler.take(measured, settled, at_s).is_some();
            if now.taken {
                now.take = crate::new_id();
            }
        }
        ScaleLine::Overload => {
            now.figure = None;
            now.text.clear();
            now.trouble = Some(ScaleSaid::TooMuch);
            settler.forget();
        }
        ScaleLine::Nothing => {}
        ScaleLine::Refused { why } => now.trouble = Some(ScaleSaid::Unreadable { why: why.into() }),
    }
}

fn text(measured: Measured) -> String {
    match measured {
        Measured::MassG(g) => quantity::decimal(g, 1),
        Measured::SwingWeightPoints(points) => quantity::SwingWeight::from_points(points).letter(1),
    }
}

fn silent(connection: &Connection) -> ScaleNow {
    ScaleNow {
        scale: connection.key.clone(),
        name: connection.name.clone(),
        shows: connection.shows,
        connected: false,
        trouble: None,
        figure: None,
        text: String::new(),
        taken: false,
        take: String::new(),
        lines: Vec::new(),
    }
}

impl App {
    /// Listens to the scales that the shop has set; those that ran before are stopped.
    ///
    /// # Errors
    /// What the store says.
    pub async fn start_scales(&self) -> Result<(), AppError> {
        let shop = self.shop().await?;
        let board = self.board.clone();
        let (step_g, step_points) = (shop.mass_scale.display_step, shop.balance_scale.display_step);
        // Stopping waits for the old threads, a tenth of a second at most.
        tokio::task::spawn_blocking(move || board.start(&shop.scales, step_g, step_points))
            .await
            .map_err(|e| AppError::Internal(format!("the scales could not be started: {e}")))
    }

    /// Stops listening to all scales.
    pub async fn stop_scales(&self) {
        let board = self.board.clone();
        // Stopping that fails leaves threads that end with the program.
        let _ = tokio::task::spawn_blocking(move || board.start(&[], 0.1, 0.1)).await;
    }

    /// What each scale shows now, with its last lines.
    #[must_use]
    pub fn scales(&self) -> Vec<ScaleNow> {
        let running = self.board.lock();
        running
            .now
            .values()
            .map(|now| ScaleNow {
                lines: running.lines.get(&now.scale).map(|l| l.iter().cloned().collect()).unwrap_or_default(),
                ..now.clone()
            })
            .collect()
    }

    /// Hears the scales from now on.
    #[must_use]
    pub fn hear_scales(&self) -> broadcast::Receiver<ScaleNow> {
        self.board.live.subscribe()
    }
}
