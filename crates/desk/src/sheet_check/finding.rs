//! What the check of a sheet finds, and what to do about it, as facts.

use fact::Told;
use jiff::civil::Date;
use trade::club_name::{ClubName, ClubNumber};
use trade::kind::{ClubKind, Hand, LengthTo};
use trade::reading::What;

fact::facts! {
    /// What is found in the sheet as a whole, or in what its clubs ask for.
    pub enum SheetFinding: "sheet_check" {
        /// More clubs than a sheet holds.
        TooManyClubs {
            /// Clubs on the sheet.
            n: usize,
            /// Most that a sheet holds.
            most: usize,
        },
        /// No player is named.
        NoPlayer,
        /// The sheet has no clubs.
        NoClubs,
        /// The day when it is due is past.
        Overdue {
            /// That day.
            due_on: Date,
            /// Days since then.
            n: i64,
        },
        /// More clubs than a player carries.
        MoreThanPlayed {
            /// Clubs on the sheet.
            n: usize,
            /// Most that a player carries.
            most: usize,
        },
        /// The head model has no such number.
        NoSuchNumber {
            /// Name of the head model.
            head: String,
            /// The number that the sheet asks for.
            number: ClubNumber,
        },
        /// A tolerance that the shop's scale cannot tell.
        ToleranceTooFine {
            /// The tolerance, points either way.
            tolerance_points: f64,
            /// Name of the scale.
            scale: String,
            /// How far off one of its readings may be, points either way.
            reading_points: f64,
        },
        /// A tolerance that is too wide to be meant.
        ToleranceTooWide {
            /// The tolerance, points either way.
            tolerance_points: f64,
        },
        /// The same club again.
        Twice {
            /// The club that is there twice.
            club: ClubName,
        },
        /// Two clubs measured to different ends.
        MixedEnds {
            /// One club.
            one: ClubName,
            /// What its length ends at.
            one_to: LengthTo,
            /// The next club.
            other: ClubName,
            /// What its length ends at.
            other_to: LengthTo,
        },
        /// The loft of another club.
        SameLoft {
            /// The loft, degrees.
            loft_deg: f64,
            /// The other club.
            other: ClubName,
        },
        /// A loft that turns the order of the set round.
        LoftOrder {
            /// The loft, degrees.
            loft_deg: f64,
            /// The club that should be stronger.
            other: ClubName,
            /// Loft of that club, degrees.
            other_deg: f64,
        },
        /// The length of another club.
        SameLength {
            /// The length to the cap, millimetres.
            length_mm: f64,
            /// The other club.
            other: ClubName,
        },
        /// Longer than a club that should be longer.
        LengthOrder {
            /// The length to the cap, millimetres.
            length_mm: f64,
            /// The club that should be longer.
            other: ClubName,
            /// Length of that club to the cap, millimetres.
            other_mm: f64,
        },
    }
}

fact::facts! {
    /// What is found in the readings of the reference club.
    pub enum ReferenceFinding: "sheet_reference" {
        /// Its length does not name its end.
        NoLengthEnd,
        /// Its swing weight does not name its scale.
        NoScale,
        /// Its frequency does not name what was clamped.
        NoClamp,
        /// It was read on a day that is still to come.
        ReadLater {
            /// That day.
            read_on: Date,
        },
        /// Two of its readings are further apart than scales are.
        ReadingsApart {
            /// The one from which the targets come, points since A0.
            first_points: f64,
            /// The other, points since A0.
            other_points: f64,
        },
        /// Its grip model is not known.
        UnknownGrip {
            /// Code of the model.
            code: String,
        },
        /// It was read with a coupler on it.
        Coupler {
            /// Mass of the coupler, grams.
            coupler_g: f64,
        },
        /// The sheet asks for another swing weight of the same number.
        OtherSwingWeight {
            /// As read, points since A0.
            read_points: f64,
            /// As the sheet asks, points since A0.
            asked_points: f64,
        },
        /// It balances where no club does.
        BalancePoint {
            /// Balance point from the cap, millimetres.
            at_mm: f64,
            /// Length, millimetres.
            length_mm: f64,
        },
        /// Mass and balance point make another swing weight than was read.
        Contradiction {
            /// Total mass, grams.
            mass_g: f64,
            /// Balance point from the cap, millimetres.
            at_mm: f64,
            /// The swing weight that these two make, points since A0.
            makes_points: f64,
            /// The swing weight that was read, points since A0.
            read_points: f64,
            /// How far apart the two are, points.
            apart_points: f64,
            /// How far apart the readings may be, points either way.
            explained_points: f64,
            /// Of that the mass, points either way.
            of_mass_points: f64,
            /// Of that the balance point, points either way.
            of_balance_points: f64,
            /// Of that the scale, points either way.
            of_scale_points: f64,
        },
        /// The same, so far apart that these are not readings of one club.
        NotOneClub {
            /// Total mass, grams.
            mass_g: f64,
            /// Balance point from the cap, millimetres.
            at_mm: f64,
            /// The swing weight that these two make, points since A0.
            makes_points: f64,
            /// The swing weight that was read, points since A0.
            read_points: f64,
            /// How far apart the two are, points.
            apart_points: f64,
            /// How far apart the readings may be, points either way.
            explained_points: f64,
            /// Of that the mass, points either way.
            of_mass_points: f64,
            /// Of that the balance point, points either way.
            of_balance_points: f64,
            /// Of that the scale, points either way.
            of_scale_points: f64,
        },
    }
}

fact::facts! {
    /// Whose bore a tip goes into.
    pub enum BoreOf: "bore_of" {
        /// The head's own.
        Head {
            /// Name of the head model.
            name: String,
        },
        /// That of the adapter which the head takes.
        Adapter {
            /// Name of the adapter model.
            name: String,
        },
    }
}

fact::facts! {
    /// How the models of one club go together.
    pub enum FitFinding: "sheet_fit" {
        /// A head for the other hand.
        WrongHand {
            /// Name of the head model.
            head: String,
            /// Hand of the head.
            hand: Hand,
            /// Hand of the player.
            player: Hand,
        },
        /// A head of another kind than the sheet names.
        WrongKind {
            /// Name of the head model.
            head: String,
            /// Kind of the head.
            kind: ClubKind,
            /// Kind on the sheet.
            asked: ClubKind,
        },
        /// No adhesive is named.
        NoAdhesive,
        /// Layers of tape, but no tape is named.
        NoTape,
        /// No base layer of tape.
        NoBaseLayer,
        /// More layers of tape than a grip usually goes over.
        ManyLayers {
            /// Layers.
            n: i64,
        },
        /// A head that takes an adapter, of which there is no model.
        NoAdapterModel {
            /// Name of the head model.
            head: String,
        },
        /// A setting of the adapter whose figures are not known.
        NoSuchSetting {
            /// What the sheet asks for, as it was written: `+1`.
            setting: String,
            /// Name of the head model.
            head: String,
        },
        /// The tip does not go into the bore.
        TipTooThick {
            /// Name of the shaft model.
            shaft: String,
            /// Diameter of its tip, millimetres.
            tip_mm: f64,
            /// Whose bore it is.
            bore: BoreOf,
            /// Diameter of the bore, millimetres.
            bore_mm: f64,
        },
        /// More play than adhesive fills.
        TipTooThin {
            /// Name of the shaft model.
            shaft: String,
            /// Diameter of its tip, millimetres.
            tip_mm: f64,
            /// Whose bore it is.
            bore: BoreOf,
            /// Diameter of the bore, millimetres.
            bore_mm: f64,
            /// The play, millimetres.
            play_mm: f64,
        },
        /// More play than is good.
        TipLoose {
            /// Name of the shaft model.
            shaft: String,
            /// Diameter of its tip, millimetres.
            tip_mm: f64,
            /// Whose bore it is.
            bore: BoreOf,
            /// Diameter of the bore, millimetres.
            bore_mm: f64,
            /// The play, millimetres.
            play_mm: f64,
        },
        /// A taper tip with a tip trim.
        TaperTrim {
            /// Name of the shaft model.
            shaft: String,
        },
        /// A ferrule of another size than the tip.
        FerruleSize {
            /// Name of the ferrule model.
            ferrule: String,
            /// Its inside diameter, millimetres.
            inside_mm: f64,
            /// Diameter of the tip, millimetres.
            tip_mm: f64,
        },
        /// No blank for the number.
        NoBlank {
            /// Name of the shaft model.
            shaft: String,
            /// The club that the shaft is for.
            club: ClubName,
            /// The numbers that it has blanks for.
            known: Vec<ClubNumber>,
        },
        /// The club would be shorter than its grip, or another figure that its parts do not allow.
        CannotBeCut {
            /// Why.
            what: Told,
        },
        /// The blank is too short for the club.
        BlankTooShort {
            /// Name of the shaft model.
            shaft: String,
            /// Length of the blank, millimetres.
            blank_mm: f64,
            /// Cut off its tip, millimetres; none where nothing is.
            trim_mm: Option<f64>,
            /// Length that the club needs, millimetres.
            needed_mm: f64,
            /// What is missing, millimetres.
            short_mm: f64,
        },
        /// Bent further than the maker allows, but a head in stock is near enough.
        BendFromStock {
            /// Loft or lie.
            what: What,
            /// As the sheet asks, degrees.
            asked_deg: f64,
            /// As the head is made, degrees.
            made_deg: f64,
            /// The bend, degrees.
            by_deg: f64,
            /// What the maker allows, degrees; none where the head must not be bent.
            limit_deg: Option<f64>,
        },
        /// Bent further than the maker allows; bent to the limit it is within the tolerance.
        BendToLimit {
            /// Loft or lie.
            what: What,
            /// As the sheet asks, degrees.
            asked_deg: f64,
            /// As the head is made, degrees.
            made_deg: f64,
            /// The bend, degrees.
            by_deg: f64,
            /// What the maker allows, degrees; none where the head must not be bent.
            limit_deg: Option<f64>,
        },
        /// Bent further than the maker allows.
        BendTooFar {
            /// Loft or lie.
            what: What,
            /// As the sheet asks, degrees.
            asked_deg: f64,
            /// As the head is made, degrees.
            made_deg: f64,
            /// The bend, degrees.
            by_deg: f64,
            /// What the maker allows, degrees; none where the head must not be bent.
            limit_deg: Option<f64>,
        },
    }
}

fact::facts! {
    /// What the stock does not have for a club.
    pub enum StockFinding: "sheet_stock" {
        /// Only a neighbour's blank is free.
        NeighbourBlank {
            /// Name of the shaft model.
            shaft: String,
            /// The club that the blank is for.
            club: ClubName,
            /// Whose blanks the model allows and the stock has.
            blanks: Vec<ClubName>,
        },
        /// No … shaft that fits is free in stock.
        NoShaft {
            /// Name of the model.
            shaft: String,
        },
        /// No … grip is free in stock.
        NoGrip {
            /// Name of the model.
            grip: String,
        },
        /// No … is free in stock.
        NoFerrule {
            /// Name of the model.
            ferrule: String,
        },
        /// … takes an adapter, and none is free in stock.
        NoAdapter {
            /// Name of the head model.
            head: String,
        },
        /// No … head for the … is free in stock.
        NoHead {
            /// Name of the model.
            head: String,
            /// The club that the head is for.
            club: ClubName,
        },
        /// Every head is too heavy.
        HeadsTooHeavy {
            /// The swing weight asked for, points since A0.
            asked_points: f64,
            /// The lightest free head, grams.
            head_g: f64,
            /// The lowest swing weight that it makes, points since A0.
            reads_points: f64,
        },
        /// Every head is too light, also with the shop's most in the tip.
        HeadsTooLight {
            /// The swing weight asked for, points since A0.
            asked_points: f64,
            /// The heaviest free head, grams.
            head_g: f64,
            /// The highest swing weight that it makes, points since A0.
            reads_points: f64,
            /// Most that goes into the tip, grams; none where no tip weight in stock fits.
            tip_g: Option<f64>,
        },
    }
}

fact::facts! {
    /// What to do about a finding.
    pub enum SheetNext: "sheet_next" {
        /// Fewer clubs.
        AtMostClubs {
            /// Most that a sheet holds.
            most: usize,
        },
        /// Name the player.
        NamePlayer,
        /// Add a club.
        AddClub,
        /// A new date.
        NewDate,
        /// Nothing, if some clubs stay at home.
        SomeStayHome,
        /// Another number or head model.
        ChooseNumber {
            /// The numbers that the head model has.
            known: Vec<ClubNumber>,
        },
        /// Change it, or tell the player.
        ChangeOrTell,
        /// Measure as the rules do.
        MeasureAsRulesDo,
        /// A wider tolerance.
        AllowMore,
        /// A narrower tolerance.
        AllowLess,
        /// Put the reading right.
        CorrectReading,
        /// Name the end.
        NameEnd,
        /// Name the scale.
        NameScale,
        /// Give the clamped length.
        GiveClamp,
        /// Correct the date.
        CorrectDate,
        /// Add the grip model, or give its cap.
        AddGripModel,
        /// The built head carries the coupler's mass.
        HeadCarriesCoupler,
        /// Nothing, if the fitting meant that.
        IfFittingMeantIt,
        /// How a balance point is measured.
        MeasureBalancePoint,
        /// The balance point was measured from the wrong end.
        MeasureFromCap {
            /// Thickness of the cap, millimetres.
            cap_mm: f64,
        },
        /// Read all three again.
        ReadAgain,
        /// One of two.
        TakeOneOut,
        /// One end for all.
        OneEnd,
        /// Correct one of two lofts.
        CorrectLoft,
        /// Correct one of two lengths.
        CorrectLength,
        /// Nothing, if one length is meant.
        IfOneLength,
        /// Another head, or another hand.
        ChooseHand,
        /// The head's kind, or another head.
        WriteKind {
            /// Kind of the head.
            kind: ClubKind,
        },
        /// Name an adhesive.
        NameAdhesive,
        /// Name a tape.
        NameTape,
        /// Nothing, if the grip goes on without tape.
        IfNoTape,
        /// A larger grip.
        LargerGrip,
        /// Add the adapter model.
        AddAdapter,
        /// A thinner shaft.
        ThinnerShaft,
        /// A shaft of the bore's size.
        ShaftOfBore,
        /// A shim, or a shaft of the bore's size.
        UseShim,
        /// The trim out of the model.
        TakeTrimOut {
            /// The club that comes out softer or stiffer by the trim.
            club: ClubName,
        },
        /// A ferrule of the tip's size.
        FerruleOfTip,
        /// A shaft that has this number.
        ShaftWithNumber,
        /// A longer blank.
        LongerBlank,
        /// Plan with the measured head.
        PlanMeasuredHead,
        /// Measure before the head is glued.
        MeasureLooseHead,
        /// Another number or head model.
        OtherHead,
        /// One of the settings that the adapter has.
        ChooseSetting {
            /// The settings.
            known: Vec<String>,
        },
        /// The figures of the settings are to be entered.
        EnterSettings,
        /// Another setting of the adapter.
        SetAdapter {
            /// The setting that comes nearest.
            setting: String,
        },
        /// Less bend, or a measured head.
        BendLess,
        /// Order the blank, or give a reason.
        OrderBlank,
        /// Order the part.
        Order,
        /// Order the shaft, or choose another model.
        OrderShaft,
        /// Order the grip, or choose another model.
        OrderGrip,
        /// Order heads of these masses.
        OrderHeads {
            /// Lightest that will do, grams.
            from_g: f64,
            /// Heaviest that will do, grams.
            to_g: f64,
        },
        /// The same, or change the sheet.
        OrderHeadsOrChange {
            /// Lightest that will do, grams.
            from_g: f64,
            /// Heaviest that will do, grams.
            to_g: f64,
        },
        /// Correct the entry.
        Correct,
    }
}
