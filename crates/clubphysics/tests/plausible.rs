//! Goal: a figure in another unit is named as what it would be, and no real club is refused.

use clubphysics::PhysicsError;
use clubphysics::plausible::{
    BORE_DEPTH_MM, CLUB_LENGTH_MM, CLUB_MASS_G, FREQUENCY_CPM, GRIP_MASS_G, HEAD_MASS_G, HEAD_SPEED_M_S, ROOM_C,
    SHAFT_LENGTH_MM, SHAFT_MASS_G, SHEAR_STRENGTH_MPA,
};
use words::check::InWords;

#[test]
fn slips_are_named_with_what_they_would_be() {
    // By hand: 38 × 25.4; 4.5 × 28.3495; 95 × 0.44704; (70 − 32) / 1.8; 5.08 × 60; 2200 × 0.0068948.
    for (table, value, meant) in [
        (CLUB_LENGTH_MM, 38.0, "This looks like inches, and 38 in is 965.2 mm"),
        (CLUB_LENGTH_MM, 96.5, "This looks like centimetres, and 96.5 cm is 965 mm"),
        (SHAFT_LENGTH_MM, 1.016, "This looks like metres, and 1.016 m is 1016 mm"),
        (SHAFT_MASS_G, 0.128, "This looks like kilograms, and 0.128 kg is 128 g"),
        (SHAFT_MASS_G, 4.5, "This looks like ounces, and 4.5 oz is 127.6 g"),
        (HEAD_SPEED_M_S, 95.0, "This looks like miles an hour, and 95 mph is 42.5 m/s"),
        (ROOM_C, 70.0, "This looks like degrees Fahrenheit, and 70 °F is 21.1 °C"),
        (FREQUENCY_CPM, 5.08, "This looks like hertz, and 5.08 Hz is 304.8 cpm"),
        (SHEAR_STRENGTH_MPA, 2200.0, "This looks like pounds a square inch, and 2200 psi is 15.2 MPa"),
        (BORE_DEPTH_MM, 1.25, "This looks like inches, and 1.25 in is 31.8 mm"),
    ] {
        assert_eq!(table.meant(value).expect("a slip").in_words(), meant);
    }
}

#[test]
fn what_is_a_club_is_allowed() {
    // A child's club of 18 in, a putter of 34 in with a head of 400 g and a grip of 150 g, a shaft of 60 in.
    for (table, value) in [
        (CLUB_LENGTH_MM, 457.2),
        (SHAFT_LENGTH_MM, 254.0),
        (SHAFT_LENGTH_MM, 1524.0),
        (HEAD_MASS_G, 120.0),
        (HEAD_MASS_G, 600.0),
        (GRIP_MASS_G, 150.0),
        (GRIP_MASS_G, 0.0),
        (CLUB_MASS_G, 1100.0),
    ] {
        assert_eq!(table.check("figure", value), Ok(value));
    }
}

#[test]
fn a_figure_without_a_size_is_no_slip_of_the_unit() {
    let told = |error: PhysicsError| error.refusal().in_words();
    let error = told(CLUB_MASS_G.check("total_mass_g", 0.0).unwrap_err());
    assert!(error.contains("above 0 g") && !error.contains("looks like"), "{error}");
    assert!(told(GRIP_MASS_G.check("grip", -1.0).unwrap_err()).contains("at least 0 g"));
}
