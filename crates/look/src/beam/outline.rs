//! Outlines of heads, seen from the front.

use super::ClubShape;

/// Outlines in inches: along the sole from the heel, up from the ground; the shaft axis meets the ground at (0, 0).
/// Own drawings; sizes are typical, not those of any head.
pub(crate) struct Outline {
    pub lie_deg: f64,
    /// Where the hosel ends on the shaft axis, inches from the ground.
    pub hosel_in: f64,
    /// How far the head reaches beyond the ground point along the shaft axis, and down from it, inches.
    pub overhang_in: f64,
    pub depth_in: f64,
    pub scale: f64,
    pub path: &'static [(char, &'static [(f64, f64)])],
    /// Lines on the face: from, to along the sole, and how far up.
    pub scores: &'static [(f64, f64, f64)],
}

const IRON: Outline = Outline {
    lie_deg: 62.0,
    hosel_in: 2.5,
    overhang_in: 1.3,
    depth_in: 3.6,
    scale: 1.0,
    path: &[
        ('M', &[(-1.41, 2.07)]),
        ('L', &[(-0.52, 0.40)]),
        ('C', &[(-0.42, 0.12), (-0.15, 0.0), (0.3, 0.0)]),
        ('L', &[(2.3, 0.0)]),
        ('C', &[(2.85, 0.02), (3.05, 0.45), (3.02, 1.0)]),
        ('C', &[(2.98, 1.65), (2.85, 2.36), (2.45, 2.34)]),
        ('C', &[(2.1, 2.3), (0.8, 1.5), (0.3, 1.2)]),
        ('C', &[(0.0, 1.03), (-0.3, 1.1), (-0.44, 1.41)]),
        ('L', &[(-0.94, 2.33)]),
    ],
    scores: &[(0.45, 2.3, 0.42), (0.5, 2.32, 0.72), (0.7, 2.34, 1.02), (1.1, 2.34, 1.32), (1.6, 2.34, 1.62)],
};

const WOOD: Outline = Outline {
    lie_deg: 58.0,
    hosel_in: 2.6,
    overhang_in: 1.8,
    depth_in: 4.35,
    scale: 1.0,
    path: &[
        ('M', &[(-1.57, 2.08)]),
        ('L', &[(-0.6, 0.62)]),
        ('C', &[(-0.42, 0.2), (-0.1, 0.0), (0.7, -0.02)]),
        ('C', &[(2.0, -0.05), (3.2, 0.05), (3.9, 0.5)]),
        ('C', &[(4.45, 0.9), (4.25, 1.75), (3.5, 2.08)]),
        ('C', &[(2.4, 2.55), (1.0, 2.35), (0.25, 1.6)]),
        ('C', &[(-0.05, 1.3), (-0.4, 1.1), (-0.62, 1.45)]),
        ('L', &[(-1.18, 2.33)]),
    ],
    scores: &[],
};

const HYBRID: Outline = Outline { lie_deg: 60.0, hosel_in: 2.0, overhang_in: 1.3, depth_in: 3.35, scale: 0.76, ..WOOD };

const PUTTER: Outline = Outline {
    lie_deg: 71.0,
    hosel_in: 1.8,
    overhang_in: 1.4,
    depth_in: 4.2,
    scale: 1.0,
    path: &[
        ('M', &[(-0.78, 1.64)]),
        ('L', &[(-0.46, 0.7)]),
        ('C', &[(-0.5, 0.1), (-0.3, 0.0), (0.0, 0.0)]),
        ('L', &[(3.6, 0.0)]),
        ('C', &[(4.0, 0.0), (4.1, 0.15), (4.1, 0.5)]),
        ('C', &[(4.1, 0.95), (3.95, 1.05), (3.6, 1.05)]),
        ('L', &[(0.4, 1.0)]),
        ('C', &[(0.05, 1.0), (-0.08, 1.0), (-0.14, 1.15)]),
        ('L', &[(-0.4, 1.78)]),
    ],
    scores: &[],
};

/// The outline of a kind of club.
pub(crate) fn outline(shape: ClubShape) -> Outline {
    match shape {
        ClubShape::Wood => WOOD,
        ClubShape::Hybrid => HYBRID,
        ClubShape::Iron => IRON,
        ClubShape::Wedge => Outline { lie_deg: 64.0, scale: 1.04, ..IRON },
        ClubShape::Putter => PUTTER,
    }
}
