//! The adapter between a head and its shaft, as a model.

use crate::error::TradeError;
use crate::error::within;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// An adapter between shaft tip and head.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdapterModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the box.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// What the adapter weighs.
    #[schema(minimum = 0.5, maximum = 40)]
    pub mass_g: f64,
    /// Length outside of which the shaft's tip stands: from the bottom of its bore to its lower end.
    #[schema(minimum = 0, maximum = 80)]
    pub length_mm: f64,
    /// Bore for the shaft's tip.
    #[schema(minimum = 6, maximum = 20)]
    pub bore_diameter_mm: f64,
    /// Code of the head model it fits.
    pub fits_head_model: String,
    /// The setting that a club is built at where its sheet asks for none.
    #[serde(default)]
    pub setting: String,
    /// What each setting does to the club, as the maker's sheet gives it; empty where it is not known.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub settings: Vec<AdapterSetting>,
}

/// Letters of the longest name of a setting.
const LONGEST_NAME: usize = 32;

/// One way of putting an adapter into its head, and what it changes against the head's own figures.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdapterSetting {
    /// What is printed on the adapter: `+1`, `flat`.
    #[schema(min_length = 1, max_length = 32, pattern = r"\S")]
    pub name: String,
    /// Loft that it adds; negative makes the club stronger.
    #[serde(default)]
    #[schema(minimum = -6, maximum = 6)]
    pub loft_deg: f64,
    /// Lie that it adds; negative makes the club flatter.
    #[serde(default)]
    #[schema(minimum = -6, maximum = 6)]
    pub lie_deg: f64,
    /// How far it opens the face; negative closes it.
    #[serde(default)]
    #[schema(minimum = -6, maximum = 6)]
    pub face_deg: f64,
    /// Length that it adds, by spacers under the adapter.
    #[serde(default)]
    #[schema(minimum = -40, maximum = 40)]
    pub length_mm: f64,
}

impl AdapterSetting {
    /// Whether a text names this setting.
    #[must_use]
    pub fn is_called(&self, name: &str) -> bool {
        self.name.trim().eq_ignore_ascii_case(name.trim())
    }
}

impl AdapterModel {
    /// The setting that a club is built at: the one that its sheet asks, else the model's own; none where its figures are
    /// not known.
    ///
    /// # Examples
    ///
    /// ```
    /// let sleeve: trade::adapter::AdapterModel = serde_json::from_str(
    ///     r#"{ "code": "SLEEVE", "name": "Sleeve", "mass_g": 5, "length_mm": 10, "bore_diameter_mm": 8.6,
    ///          "fits_head_model": "DRIVER", "setting": "0", "settings": [{ "name": "0" },
    ///          { "name": "+1", "loft_deg": 1, "lie_deg": 0.5, "face_deg": -1 }] }"#)?;
    /// assert_eq!(sleeve.built_at(Some("+1")).map(|setting| setting.loft_deg), Some(1.0));
    /// assert_eq!(sleeve.built_at(None).map(|setting| setting.loft_deg), Some(0.0));
    /// assert!(sleeve.built_at(Some("+7")).is_none());
    /// # Ok::<(), serde_json::Error>(())
    /// ```
    #[must_use]
    pub fn built_at(&self, asked: Option<&str>) -> Option<&AdapterSetting> {
        let name = asked.unwrap_or(&self.setting);
        self.settings.iter().find(|setting| setting.is_called(name))
    }

    /// What a setting adds to loft and lie of the head, degrees; nothing where its figures are not known.
    #[must_use]
    pub fn turns_deg(&self, asked: Option<&str>) -> (f64, f64) {
        self.built_at(asked).map_or((0.0, 0.0), |setting| (setting.loft_deg, setting.lie_deg))
    }

    /// How far it lifts the shaft's tip off the bottom of the head's bore at a setting, mm.
    #[must_use]
    pub fn lifts_mm(&self, asked: Option<&str>) -> f64 {
        self.length_mm + self.built_at(asked).map_or(0.0, |setting| setting.length_mm)
    }

    /// Of all its settings the one that brings loft and lie nearest to what is asked, from what they are at a setting now.
    #[must_use]
    pub fn nearest(&self, now: Option<&str>, (loft_more_deg, lie_more_deg): (f64, f64)) -> Option<&AdapterSetting> {
        let (loft_now, lie_now) = self.turns_deg(now);
        let off =
            |s: &&AdapterSetting| (s.loft_deg - loft_now - loft_more_deg).hypot(s.lie_deg - lie_now - lie_more_deg);
        self.settings.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("mass_g", self.mass_g, 0.5, 40.0, "g")?;
        within("length_mm", self.length_mm, 0.0, 80.0, "mm")?;
        within("bore_diameter_mm", self.bore_diameter_mm, 6.0, 20.0, "mm")?;
        for (i, setting) in self.settings.iter().enumerate() {
            if setting.name.trim().is_empty() || setting.name.chars().count() > LONGEST_NAME {
                return Err(TradeError::refused(AdapterFault::SettingName { number: i as i64 + 1 }));
            }
            if self.settings[..i].iter().any(|other| other.is_called(&setting.name)) {
                return Err(TradeError::refused(AdapterFault::SettingTwice { name: setting.name.clone() }));
            }
            for (name, value) in
                [("loft_deg", setting.loft_deg), ("lie_deg", setting.lie_deg), ("face_deg", setting.face_deg)]
            {
                within(format!("settings.{name}"), value, -6.0, 6.0, "°")?;
            }
            within("settings.length_mm", setting.length_mm, -40.0, 40.0, "mm")?;
        }
        let known = self.settings.is_empty() || self.setting.is_empty() || self.built_at(None).is_some();
        if !known {
            return Err(TradeError::refused(AdapterFault::NoSuchSetting { name: self.setting.clone() }));
        }
        Ok(())
    }
}

fact::facts! {
    /// What is refused of an adapter model.
    pub(crate) enum AdapterFault: "adapter_fault" {
        SettingTwice { name: String },
        SettingName { number: i64 },
        NoSuchSetting { name: String },
    }
}
