//! A label printer: where it is, which page language it reads, and what is in it.

use crate::error::TradeError;
use crate::kind::closed_list;
use fact::Refusal;
use serde::{Deserialize, Serialize};
use std::path::PathBuf;
use utoipa::ToSchema;

/// The port on which printers in a network take a page as it is. Common practice of their makers, from memory.
pub const RAW_PORT: u16 = 9100;
/// Most letters of a printer's name.
const LONGEST_NAME: usize = 40;
/// Sides of a label, millimetres. Common practice, no source.
const SIDE_MM: (f64, f64) = (10.0, 220.0);
/// Most copies of a label at once, against a slip of the key.
pub const MOST_COPIES: u32 = 50;

closed_list! {
    /// The page language that a printer reads.
    PageLanguage {
        /// ZPL II.
        Zpl = "zpl";
        /// EPL2.
        Epl = "epl";
        /// ESC/POS, of printers for receipts.
        EscPos = "esc_pos";
    }
}

closed_list! {
    /// How fine a printer prints.
    Fineness {
        /// 203 dots an inch: 8 dots a millimetre.
        Dpi203 = "203";
        /// 300 dots an inch: close to 12 dots a millimetre.
        Dpi300 = "300";
    }
}

impl Fineness {
    /// Dots a millimetre.
    #[must_use]
    pub const fn dots_per_mm(self) -> f64 {
        match self {
            Self::Dpi203 => 203.0 / 25.4,
            Self::Dpi300 => 300.0 / 25.4,
        }
    }
}

/// A label printer of the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LabelPrinter {
    /// What people call it: `shelf`.
    pub name: String,
    /// Where it is: an address in the network, `192.168.1.40` or `printer.local:9100`, or a device of this machine,
    /// `/dev/usb/lp0`.
    pub to: String,
    /// The page language that it reads.
    pub language: PageLanguage,
    /// How fine it prints.
    pub fineness: Fineness,
    /// Width of its labels.
    #[schema(minimum = 10, maximum = 220)]
    pub width_mm: f64,
    /// Height of its labels; a printer for receipts cuts behind each and needs none.
    #[schema(minimum = 10, maximum = 220)]
    pub height_mm: f64,
    /// Gap between two labels on the roll; 0 for a roll without gaps.
    #[serde(default)]
    #[schema(minimum = 0, maximum = 20)]
    pub gap_mm: f64,
}

/// Where a printer takes its pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PrinterPlace {
    /// In the network.
    Network {
        /// Name or address in figures.
        host: String,
        /// Port that takes pages, from 1 to 65535; 9100 where none is written.
        port: u16,
    },
    /// At this machine.
    Device(PathBuf),
}

impl PrinterPlace {
    /// Where a text says that a printer is.
    ///
    /// # Errors
    /// A text that is neither a host with or without a port nor a device below `/dev`.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::label_printer::PrinterPlace;
    ///
    /// let place = PrinterPlace::read("192.168.1.40")?;
    /// assert_eq!(place, PrinterPlace::Network { host: "192.168.1.40".into(), port: 9100 });
    /// assert!(PrinterPlace::read("http://192.168.1.40").is_err());
    /// # Ok::<(), trade::error::TradeError>(())
    /// ```
    pub fn read(text: &str) -> Result<Self, TradeError> {
        let text = text.trim();
        let wrong = || {
            TradeError::refused(Refusal::new(&PrinterSetting::Place { text: text.chars().take(80).collect() }).at("to"))
        };
        if text.starts_with('/') {
            // A printer is a device; a page written over a file of the machine would be a loss.
            let plain = text.strip_prefix("/dev/").is_some_and(|rest| {
                !rest.is_empty() && rest.split('/').all(|part| !part.is_empty() && part != ".." && part != ".")
            });
            return if plain { Ok(Self::Device(PathBuf::from(text))) } else { Err(wrong()) };
        }
        let (host, port) = match text.rsplit_once(':') {
            Some((host, port)) => (host, port.parse().ok().filter(|port| *port != 0).ok_or_else(wrong)?),
            None => (text, RAW_PORT),
        };
        let sound = |c: char| c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | '_');
        if host.is_empty() || !host.chars().all(sound) {
            return Err(wrong());
        }
        Ok(Self::Network { host: host.to_owned(), port })
    }
}

impl LabelPrinter {
    /// Checks what was set.
    ///
    /// # Errors
    /// No name or a long one; a place that is none; a label that no printer takes.
    pub fn check(&self) -> Result<PrinterPlace, TradeError> {
        let refused = |fault: &PrinterSetting, at: &str| Err(TradeError::refused(Refusal::new(fault).at(at)));
        let letters = self.name.trim().chars().count();
        if letters == 0 || letters > LONGEST_NAME {
            return refused(&PrinterSetting::Name { most: LONGEST_NAME }, "name");
        }
        let (least_mm, most_mm) = SIDE_MM;
        for (side_mm, at) in [(self.width_mm, "width_mm"), (self.height_mm, "height_mm")] {
            if !(least_mm..=most_mm).contains(&side_mm) {
                return refused(&PrinterSetting::Side { least_mm, most_mm }, at);
            }
        }
        if !(0.0..=20.0).contains(&self.gap_mm) {
            return refused(&PrinterSetting::Gap { most_mm: 20.0 }, "gap_mm");
        }
        PrinterPlace::read(&self.to)
    }
}

/// Checks the printers of a shop: each sound, no name twice.
///
/// # Errors
/// As [`LabelPrinter::check`]; a name that two have.
pub fn check_printers(printers: &[LabelPrinter]) -> Result<(), TradeError> {
    let mut names = std::collections::BTreeSet::new();
    for printer in printers {
        printer.check()?;
        if !names.insert(printer.name.trim().to_lowercase()) {
            let fault = PrinterSetting::Twice { name: printer.name.clone() };
            return Err(TradeError::refused(Refusal::new(&fault).at("name")));
        }
    }
    Ok(())
}

fact::facts! {
    /// What is refused of a printer's settings.
    pub enum PrinterSetting: "printer_setting" {
        /// No name, or a long one.
        Name {
            /// Most letters.
            most: usize,
        },
        /// Two printers of one name.
        Twice {
            /// What both are called; capitals do not matter.
            name: String,
        },
        /// Neither an address in the network nor a device.
        Place {
            /// As it was typed.
            text: String,
        },
        /// A label of a size that no printer takes.
        Side {
            /// Shortest side.
            least_mm: f64,
            /// Longest side.
            most_mm: f64,
        },
        /// A gap that no roll has.
        Gap {
            /// Widest gap.
            most_mm: f64,
        },
        /// More copies than anybody means.
        Copies {
            /// Most copies.
            most: u32,
        },
        /// The shop has no printer.
        None,
        /// The shop has no printer of this name.
        Unknown {
            /// As it was typed.
            name: String,
            /// Names of the printers that the shop has.
            known: Vec<String>,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::PrinterPlace;

    #[test]
    fn a_place_is_a_host_or_a_device_and_nothing_else() {
        for (text, meant) in [
            ("printer.local", PrinterPlace::Network { host: "printer.local".into(), port: 9100 }),
            (" 10.0.0.7:6101 ", PrinterPlace::Network { host: "10.0.0.7".into(), port: 6101 }),
            ("/dev/usb/lp0", PrinterPlace::Device("/dev/usb/lp0".into())),
        ] {
            assert_eq!(PrinterPlace::read(text).expect(text), meant);
        }
        for wrong in [
            "",
            "/etc/passwd",
            "/dev/",
            "/dev/../etc/passwd",
            "/dev//lp0",
            "a b",
            "host:",
            "host:0",
            "host:99999",
            "http://a:9100",
        ] {
            assert!(PrinterPlace::read(wrong).is_err(), "{wrong}");
        }
    }
}
