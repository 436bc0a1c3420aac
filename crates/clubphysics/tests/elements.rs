//! Goal: the chain of elements holds for elements of very unequal length, and refuses one without stiffness. Its file is read
//! here once more: the crate does not show it.

#[path = "../src/vibration/chain.rs"]
#[allow(dead_code, reason = "the beam uses the rest")]
mod chain;

use chain::Chain;

/// A uniform cantilever of EI 1 and length 1 under a force of 1 at its tip: deflection 1/3, slope 1/2 (any
/// textbook), whatever the elements are, a nanometre among them.
#[test]
fn a_cantilever_in_uneven_elements() {
    let ends = [0.3, 0.3 + 1e-9, 0.75, 0.75 + 1e-12, 1.0];
    let mut chain = Chain::with_capacity(ends.len());
    let mut from = 0.0;
    for to in ends {
        let h: f64 = to - from;
        assert!(chain.push(h, [12.0 / h.powi(3), -6.0 / h.powi(2), 4.0 / h]));
        from = to;
    }
    let mut x = [0.0; 10];
    x[8] = 1.0;
    chain.bend(&mut x);
    assert!((x[8] - 1.0 / 3.0).abs() < 1e-15 && (x[9] - 0.5).abs() < 1e-15, "{x:?}");
}

#[test]
fn an_element_without_stiffness_is_not_taken() {
    assert!(!Chain::with_capacity(1).push(0.1, [0.0, 0.0, 0.0]));
    // A force bends it and no moment holds it: a hinge at its middle.
    assert!(!Chain::with_capacity(1).push(0.1, [4.0, -2.0, 1.0]));
    assert!(!Chain::with_capacity(1).push(0.1, [-12.0, 6.0, -4.0]));
}
