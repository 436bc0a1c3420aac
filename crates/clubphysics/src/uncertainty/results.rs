//! Results by name instead of by number.

use super::{Estimate, Propagated};

/// Results of a formula with a name each: a struct with a field a result, in dual numbers where the formula is evaluated
/// and in estimates where they are read.
///
/// Propagation needs a list. What makes the list and what reads it are the one walk of [`Results::each`], so nothing but
/// the struct itself knows an order, and a result that is added or that one input has and another has not moves no other.
pub(crate) trait Results<N> {
    /// The same results in another kind of number.
    type Of<M>;

    /// Every result, always in the same order, and what becomes of it in its place.
    fn each<M>(self, to: &mut dyn FnMut(N) -> M) -> Self::Of<M>;
}

/// All results in their order.
pub(super) fn listed<N, R: Results<N>>(results: R) -> Vec<N> {
    let mut list = Vec::new();
    results.each(&mut |result| list.push(result));
    list
}

/// The estimates of a list that [`listed`] made, under the names of the same results.
pub(super) fn read_back<N, R: Results<N>>(results: R, propagated: &Propagated) -> R::Of<Estimate> {
    let mut estimates = (0..propagated.values().len()).map(|i| propagated.estimate(i));
    // The walk that made the list meets every result again; without one there is no figure to show.
    results.each(&mut |_| estimates.next().unwrap_or(Estimate { value: f64::NAN, sd: None }))
}

/// A struct of results, each field one of them.
macro_rules! results {
    ($(#[$about:meta])* $vis:vis struct $name:ident { $($(#[$said:meta])* $field:ident),+ $(,)? }) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy)]
        $vis struct $name<N> {
            $($(#[$said])* pub $field: N,)+
        }

        impl<N> $crate::uncertainty::Results<N> for $name<N> {
            type Of<M> = $name<M>;
            fn each<M>(self, to: &mut dyn FnMut(N) -> M) -> $name<M> {
                $name { $($field: to(self.$field),)+ }
            }
        }
    };
}
pub(crate) use results;

/// Results that are there only where they were asked for.
impl<N, R: Results<N>> Results<N> for Option<R> {
    type Of<M> = Option<R::Of<M>>;
    fn each<M>(self, to: &mut dyn FnMut(N) -> M) -> Self::Of<M> {
        self.map(|results| results.each(to))
    }
}

/// The same results of several things.
impl<N, R: Results<N>> Results<N> for Vec<R> {
    type Of<M> = Vec<R::Of<M>>;
    fn each<M>(self, to: &mut dyn FnMut(N) -> M) -> Self::Of<M> {
        self.into_iter().map(|results| results.each(to)).collect()
    }
}

impl<N, R: Results<N>, const COUNT: usize> Results<N> for [R; COUNT] {
    type Of<M> = [R::Of<M>; COUNT];
    fn each<M>(self, to: &mut dyn FnMut(N) -> M) -> Self::Of<M> {
        self.map(|results| results.each(to))
    }
}

macro_rules! together {
    ($($results:ident $at:tt),+) => {
        impl<N, $($results: Results<N>),+> Results<N> for ($($results,)+) {
            type Of<M> = ($($results::Of<M>,)+);
            fn each<M>(self, to: &mut dyn FnMut(N) -> M) -> Self::Of<M> {
                ($(self.$at.each(to),)+)
            }
        }
    };
}
together!(A 0, B 1);
together!(A 0, B 1, C 2);
together!(A 0, B 1, C 2, D 3);
