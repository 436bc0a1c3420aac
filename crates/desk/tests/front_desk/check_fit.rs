//! Whether models and stock go with the sheet.

use super::check::{changed, irons, lines};
use super::{library, line, shop_of, today, w};
use desk::sheet_check::check;
use desk::sheet_check::{Severity, head_window};
use trade::kind::{ClubKind, Hand};
use trade::model::{Library, Model, PartKind};
use trade::shaft::TipTrim;
use trade::sheet::Sheet;

fn with_library(sheet: &Sheet, change: impl Fn(&mut Model)) -> String {
    let mut models = shop_of::models();
    models.iter_mut().for_each(change);
    let library: Library = models.into_iter().collect();
    let found = check(sheet, &library, &shop_of::parts(7), &shop_of::shop(), today());
    found.iter().map(|p| format!("{}: {}", p.severity.key(), line(p))).collect::<Vec<_>>().join("\n")
}

fn one(change: impl FnOnce(&mut Sheet)) -> Sheet {
    changed(|s| {
        s.clubs = vec![s.clubs[2].clone()];
        s.reference = None;
        change(s);
    })
}

#[test]
fn models_that_are_not_there_or_not_of_the_kind() {
    let sheet = one(|s| {
        let c = &mut s.clubs[0];
        c.shaft_model = "NOBODY".into();
        c.grip_model = "SISKIN".into();
        c.ferrule_model = Some("OLIVINE".into());
        c.adhesive = Some("PASTE".into());
        c.tape = Some("STRING".into());
    });
    let number = one(|s| s.clubs[0].number = "2".into());
    insta::assert_snapshot!(format!("{}\n\n{}", lines(&sheet), lines(&number)), @r##"
    stop: clubs[0].shaft_model: the 6-iron: there is no shaft model “NOBODY”. Known are GREGALE-P, LEVANTER-W, LIBECCIO-T and TRAMONTANA-P; or add it under Stock, Models
    stop: clubs[0].grip_model: the 6-iron: there is no grip model “SISKIN”. Known are FELDSPAR, GNEISS and OLIVINE; or add it under Stock, Models
    stop: clubs[0].ferrule_model: the 6-iron: there is no ferrule model “OLIVINE”. Known are FERRULE-335, FERRULE-355 and FERRULE-370; or add it under Stock, Models
    stop: clubs[0].adhesive: the 6-iron: there is no adhesive model “PASTE”. Known are DOLERITE; or add it under Stock, Models
    stop: clubs[0].tape: the 6-iron: there is no tape model “STRING”. Known are TAPE-2S and TAPE-BUILD; or add it under Stock, Models

    stop: clubs[0].number: the 2-iron: Siskin has no 2. Choose one of 4, 5, 6, 7, 8, 9, PW and GW, or another head model
    "##);
}

#[test]
fn hand_and_kind() {
    let sheet = one(|s| {
        s.hand = Hand::Left;
        s.clubs[0].club_kind = ClubKind::Wedge;
    });
    insta::assert_snapshot!(lines(&sheet), @r##"
    stop: clubs[0].head_model: the 6 wedge: Siskin is a right-hand head, and the sheet is for a left-hand player. Choose the model for the player's hand, or correct the hand of the sheet
    stop: clubs[0].club_kind: the 6 wedge: Siskin is of the kind iron, and the sheet has wedge here. Write iron, or choose another head model
    "##);
}

/// A 0.370 in tip in a 0.355 in bore does not go in; the other way round it has 0.38 mm of play.
#[test]
fn bore_tip_and_ferrule() {
    let thick = one(|s| s.clubs[0].head_model = "REDSTART".into());
    let thin = one(|s| s.clubs[0].shaft_model = "LIBECCIO-T".into());
    let wood = one(|s| s.clubs[0].shaft_model = "LEVANTER-W".into());
    insta::assert_snapshot!([lines(&thick), lines(&thin), lines(&wood)].join("\n\n"), @r##"
    stop: clubs[0].shaft_model: the 6-iron: the tip of Tramontana parallel is 0.370 in and the bore of Redstart 0.355 in: it does not go in. Choose a shaft of the bore's size; ream only within the head maker's limits

    warn: clubs[0].shaft_model: the 6-iron: the tip of Libeccio taper is 0.355 in and the bore of Siskin 0.370 in: 0.015 in of play. Use a shim, or a shaft of the bore's size

    stop: clubs[0].shaft_model: the 6-iron: the tip of Levanter wood is 0.335 in and the bore of Siskin 0.370 in: 0.035 in of play, more than adhesive fills. Choose a shaft of the bore's size
    warn: clubs[0].ferrule_model: the 6-iron: Ferrule 0.370 in is 0.370 in inside and the tip 0.335 in. Choose a ferrule of the tip's size
    "##);
}

#[test]
fn blanks_and_trims() {
    let taper = |m: &mut Model, keep: bool| {
        if let Model::Shaft(s) = m
            && s.code == "LIBECCIO-T"
            && !keep
        {
            s.blanks.retain(|b| b.number.as_deref() != Some("6"));
        }
    };
    let sheet = one(|s| {
        (s.clubs[0].head_model, s.clubs[0].shaft_model, s.clubs[0].ferrule_model) =
            ("REDSTART".into(), "LIBECCIO-T".into(), Some("FERRULE-355".into()));
    });
    let none = with_library(&sheet, |m| taper(m, false));
    let trimmed = with_library(&sheet, |m| {
        if let Model::Shaft(s) = m
            && s.code == "LIBECCIO-T"
        {
            s.tip_trim = vec![TipTrim { number: "6".into(), trim_mm: 60.0 }];
        }
    });
    insta::assert_snapshot!([none, trimmed].join("\n\n"), @r##"
    stop: clubs[0].shaft_model: the 6-iron: Libeccio taper has no blank for the 6-iron; it has 4, 5, 7, 8, 9, PW, GW, 50, 54 and 58. Choose a shaft model with this number, or add the blank to the model

    warn: clubs[0].shaft_model: the 6-iron: Libeccio taper has a taper tip and a tip trim; taper tips are cut at the butt only. Take the trim out of the model, unless the 6-iron is meant to be softer or stiffer
    "##);
}

/// The number's own blank is out of stock: the neighbours' stand in by the model's rule, and it is said.
#[test]
fn a_neighbours_blank_is_said() {
    let sheet = one(|s| {
        (s.clubs[0].head_model, s.clubs[0].shaft_model, s.clubs[0].ferrule_model) =
            ("REDSTART".into(), "LIBECCIO-T".into(), Some("FERRULE-355".into()));
    });
    let mut stock = shop_of::parts(7);
    stock.retain(|p| !(p.kind == PartKind::Shaft && p.model == "LIBECCIO-T" && p.number.as_deref() == Some("6")));
    let found = check(&sheet, &library(), &stock, &shop_of::shop(), today());
    let said: Vec<_> = found.iter().map(line).collect();
    insta::assert_snapshot!(said.join("\n"), @r##"
    clubs[0].shaft_model: the 6-iron: no blank of Libeccio taper for the 6-iron is free in stock; the model allows that of the 5-iron and 7-iron. A neighbour's blank changes the flex: order the right one, or give a reason on the job
    "##);
}

#[test]
fn bends_beyond_the_makers_limit() {
    let far = one(|s| (s.clubs[0].lie_deg, s.clubs[0].loft_deg) = (68.0, 30.3));
    let wood = changed(|s| {
        *s = shop_of::sheets(today()).remove(1);
        s.clubs[0].loft_deg = 9.5;
    });
    insta::assert_snapshot!(format!("{}\n\n{}", lines(&far), lines(&wood)), @r##"
    stop: clubs[0].lie_deg: the 6-iron: lie 68.0° is 6.5° from the 61.5° of the model, and the maker allows 3.0°. Ask for less, or measure loose heads: one may be nearer as received
    warn: clubs[0].loft_deg: the 6-iron: loft 30.3° is 3.3° from the 27.0° of the model, and the maker allows 3.0°; a head in stock is near enough. Plan with the head that was measured

    stop: clubs[0].loft_deg: the driver: loft 9.5° is 1.0° from the 10.5° of the model, and this head must not be bent. The setting “-1” comes nearest: ask for it, or for other angles
    "##);
}

#[test]
fn an_adapter_is_needed() {
    let sheet = shop_of::sheets(today()).remove(1);
    let mut stock = shop_of::parts(7);
    stock.retain(|p| p.kind != PartKind::Adapter);
    let found = check(&sheet, &library(), &stock, &shop_of::shop(), today());
    assert_eq!(found.len(), 1);
    assert_eq!(
        line(&found[0]),
        "clubs[0].head_model: the driver: Fieldfare takes an adapter, and none is free in stock. Order one"
    );
    let without: Library = shop_of::models().into_iter().filter(|m| m.kind() != PartKind::Adapter).collect();
    let found = check(&sheet, &without, &stock, &shop_of::shop(), today());
    assert_eq!(found.iter().filter(|p| p.severity == Severity::Stop).count(), 1);
}

/// What stock cannot reach: an empty shelf, and a swing weight for which every head is too light. The masses to order are
/// those with which the whole club, reckoned in slices, reads the target with nothing and with 9 g in the tip.
#[test]
fn what_no_part_in_stock_reaches() {
    let sheet = one(|s| s.clubs[0].swing_weight_points = 40.0);
    let mut stock = shop_of::parts(7);
    let found = check(&sheet, &library(), &stock, &shop_of::shop(), today());
    stock.retain(|p| !matches!(p.kind, PartKind::Head | PartKind::Shaft | PartKind::Grip | PartKind::Ferrule));
    let empty = check(&sheet, &library(), &stock, &shop_of::shop(), today());
    let said: Vec<_> = found.iter().chain(&empty).map(line).collect();
    insta::assert_snapshot!(said.join("\n"), @r##"
    clubs[0].swing_weight_points: the 6-iron: the stock does not reach E0.0: the heaviest free head, 260.3 g, makes D5.5 with 9.0 g in the tip. Order heads of 269.0 to 281.4 g, or change length, grip or swing weight
    clubs[0].shaft_model: the 6-iron: no Tramontana parallel shaft that fits is free in stock. Order one, or choose another shaft model
    clubs[0].grip_model: the 6-iron: no Olivine grip is free in stock. Order one, or choose another grip model
    clubs[0].ferrule_model: the 6-iron: no Ferrule 0.370 in is free in stock. Order one
    clubs[0].head_model: the 6-iron: no Siskin head for the 6-iron is free in stock. Order heads of 270.3 to 280.0 g
    "##);
    let window = head_window(&sheet.clubs[0], &library(), &shop_of::shop()).unwrap();
    let slices = super::demo::slices(&sheet.clubs[0]);
    // Slices of half a millimetre and the middle of a short tip weight: within a twentieth of a point.
    assert!((slices.swing_weight(window.to_g, 0.0) - 40.0).abs() < 0.05);
    assert!((slices.swing_weight(window.from_g, 9.0) - 40.0).abs() < 0.05);
}

/// Without a tip weight in stock the masses to order are still a window: the whole club, in slices, reads the target less
/// its tolerance with the lightest of them, and the target with it added with the heaviest.
#[test]
fn heads_to_order_are_a_window_without_tip_weights() {
    let sheet = one(|_| {});
    let mut stock = shop_of::parts(7);
    stock.retain(|p| !matches!(p.kind, PartKind::Head | PartKind::Shaft | PartKind::Grip | PartKind::TipWeight));
    let found = check(&sheet, &library(), &stock, &shop_of::shop(), today());
    let no_head = found.iter().find(|p| p.fact.code() == "sheet_stock.no_head").expect("no head is found");
    let mass_g = |name| match no_head.next.figure(name) {
        Some(fact::Figure::Number(mass_g)) => *mass_g,
        other => panic!("{name}: {other:?}"),
    };
    let (club, slices) = (&sheet.clubs[0], super::demo::slices(&sheet.clubs[0]));
    let tolerance = club.tolerances.swing_weight_points;
    for (name, off) in [("from_g", -tolerance), ("to_g", tolerance)] {
        let reads = slices.swing_weight(mass_g(name), 0.0);
        assert!((reads - club.swing_weight_points - off).abs() < 0.05, "{name}: {reads}");
    }
}

/// Parts that another job holds do not count.
#[test]
fn held_parts_do_not_count() {
    let sheet = one(|_| {});
    let mut stock = shop_of::parts(7);
    for p in stock.iter_mut().filter(|p| p.kind == PartKind::Head) {
        p.state = trade::part::PartState::Held;
    }
    let found = check(&sheet, &library(), &stock, &shop_of::shop(), today());
    assert_eq!(found.len(), 1, "{found:?}");
    assert!(w().told(&found[0].fact).starts_with("no Siskin head for the 6-iron is free in stock"));
    assert_eq!(irons().clubs.len(), 8);
}

#[test]
fn small_things() {
    let sheet = one(|s| s.clubs[0].wraps = trade::wrap::Wraps { base: 0, full: 6, lower_hand: 4 });
    let mut shop = shop_of::shop();
    (shop.adhesive, shop.tape) = (None, None);
    let found = check(&sheet, &library(), &shop_of::parts(7), &shop, today());
    let said: Vec<_> = found.iter().map(|p| format!("{}: {}", p.severity.key(), line(p))).collect();
    insta::assert_snapshot!(said.join("\n"), @r##"
    warn: clubs[0].adhesive: the 6-iron: no adhesive is named, here or for the shop. Choose one: its mass and its cure times count
    warn: clubs[0].tape: the 6-iron: it has layers of tape, but no tape is named, here or for the shop. Choose one: its mass counts
    warn: clubs[0].wraps: the 6-iron: 10 layers of tape are more than a grip usually goes over. Choose a larger grip if this many layers are meant
    note: clubs[0].wraps: the 6-iron: no base layer of tape holds the grip. Nothing to do if the grip goes on without tape
    "##);
}
