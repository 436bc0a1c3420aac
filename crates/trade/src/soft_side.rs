//! Where the soft side of a shaft is, as it was read: degrees from the label, and how sure that is.

use crate::reading::{Reading, What};

/// The soft side as a builder writes it: `74`, or `74 ± 4` where a sweep or a pluck tells how sure it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SoftSideRead {
    /// Degrees from the label, clockwise seen from the butt.
    pub at_deg: f64,
    /// Half width of its 95 % band, degrees; none where it was not told.
    pub band_deg: Option<f64>,
}

impl SoftSideRead {
    /// The text of an angle before its band, and the band; the text alone where it has none.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::soft_side::SoftSideRead;
    ///
    /// assert_eq!(SoftSideRead::apart("74 ± 4.5"), ("74", Some(4.5)));
    /// assert_eq!(SoftSideRead::apart("74 +- 4°"), ("74", Some(4.0)));
    /// assert_eq!(SoftSideRead::apart("74°"), ("74°", None));
    /// ```
    #[must_use]
    pub fn apart(text: &str) -> (&str, Option<f64>) {
        let parts = text.split_once('±').or_else(|| text.split_once("+-"));
        parts.map_or((text.trim(), None), |(angle, band)| {
            let band = band.trim().trim_end_matches('°').trim().parse::<f64>();
            (angle.trim(), band.ok().filter(|band| band.is_finite() && *band >= 0.0))
        })
    }

    /// What a reading of a soft side says.
    #[must_use]
    pub fn of(reading: &Reading) -> Option<Self> {
        let of_it = reading.what == What::SoftSide;
        of_it.then(|| Self { at_deg: reading.value, band_deg: Self::apart(&reading.typed).1 })
    }

    /// As a builder writes it.
    #[must_use]
    pub fn written(&self) -> String {
        match self.band_deg {
            Some(band) => format!("{:.0} ± {band:.0}", self.at_deg),
            None => format!("{:.0}", self.at_deg),
        }
    }
}
