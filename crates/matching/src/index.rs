//! What the search looks things up by: kinds of parts, types of a kind, candidates of a club, and places in a list.
//!
//! A number of one sort does not stand for another: a list by type takes a [`Ty`], an array by kind a [`PartKind`], and
//! neither takes a bare number.
//!
//! # Examples
//! ```
//! use matching::PartKind;
//! use matching::index::{ByKind, PerType, Ty};
//!
//! let stock = ByKind::from_fn(|kind| PerType::new(if kind == PartKind::Tip { 7 } else { 40 }, 1_u32));
//! assert_eq!(stock[PartKind::Tip][Ty::of(6)], 1);
//! ```
//!
//! A kind is no number:
//!
//! ```compile_fail
//! use matching::PartKind;
//! use matching::index::{ByKind, PerType, Ty};
//!
//! let stock = ByKind::from_fn(|kind| PerType::new(if kind == PartKind::Tip { 7 } else { 40 }, 1_u32));
//! assert_eq!(stock[3][Ty::of(6)], 1);
//! ```
//!
//! Nor is a type:
//!
//! ```compile_fail
//! use matching::PartKind;
//! use matching::index::{ByKind, PerType, Ty};
//!
//! let stock = ByKind::from_fn(|kind| PerType::new(if kind == PartKind::Tip { 7 } else { 40 }, 1_u32));
//! assert_eq!(stock[PartKind::Tip][6], 1);
//! ```
//!
//! The place of a candidate in its club's list is not its type:
//!
//! ```compile_fail
//! use matching::PartKind;
//! use matching::index::{ByKind, PerType, Place};
//!
//! let stock = ByKind::from_fn(|kind| PerType::new(if kind == PartKind::Tip { 7 } else { 40 }, 1_u32));
//! assert_eq!(stock[PartKind::Tip][Place::of(6)], 1);
//! ```
//!
//! Tip weights and adapters are not among the three kinds of which every club takes one:
//!
//! ```
//! use matching::index::{ByMain, MainKind};
//!
//! let taken = ByMain::from_fn(|_| 1);
//! assert_eq!(taken[MainKind::Grip], 1);
//! ```
//!
//! ```compile_fail
//! use matching::PartKind;
//! use matching::index::{ByMain, MainKind};
//!
//! let taken = ByMain::from_fn(|_| 1);
//! assert_eq!(taken[PartKind::Tip], 1);
//! ```

use std::ops::{Index, IndexMut};

use crate::error::PartKind;

/// A kind of which every club takes one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum MainKind {
    /// Club head.
    Head,
    /// Shaft.
    Shaft,
    /// Grip.
    Grip,
}

/// See [`MainKind::Head`].
pub const HEAD: MainKind = MainKind::Head;
/// See [`MainKind::Shaft`].
pub const SHAFT: MainKind = MainKind::Shaft;
/// See [`MainKind::Grip`].
pub const GRIP: MainKind = MainKind::Grip;
/// See [`PartKind::Tip`].
pub const TIP: PartKind = PartKind::Tip;
/// See [`PartKind::Adapter`].
pub const ADAPTER: PartKind = PartKind::Adapter;

/// The kinds of which every club takes one.
pub const MAIN: [MainKind; 3] = [HEAD, SHAFT, GRIP];

/// All kinds, in the order of their declaration.
pub const KINDS: [PartKind; 5] = [PartKind::Head, PartKind::Shaft, PartKind::Grip, TIP, ADAPTER];

impl From<MainKind> for PartKind {
    fn from(kind: MainKind) -> Self {
        match kind {
            MainKind::Head => Self::Head,
            MainKind::Shaft => Self::Shaft,
            MainKind::Grip => Self::Grip,
        }
    }
}

/// An array with one entry for each variant of an enum, in the order of declaration.
macro_rules! by_variant {
    ($(#[$doc:meta])* $name:ident, $kind:ident, $all:ident, $count:literal) => {
        $(#[$doc])*
        #[derive(Debug, Default, PartialEq, Eq)]
        pub struct $name<T>([T; $count]);

        // By hand, because a derived `clone_from` would not keep the room that the entries have.
        impl<T: Clone> Clone for $name<T> {
            fn clone(&self) -> Self {
                Self(self.0.clone())
            }

            fn clone_from(&mut self, source: &Self) {
                self.0.clone_from(&source.0);
            }
        }

        impl<T> $name<T> {
            /// A variant's number is its place in the declaration, and there are as many entries as variants.
            fn place(kind: $kind) -> usize {
                kind as usize
            }

            /// One entry for each kind.
            pub fn from_fn(make: impl FnMut($kind) -> T) -> Self {
                Self($all.map(make))
            }

            /// Another figure for each entry.
            pub fn each<U>(&self, make: impl FnMut(&T) -> U) -> $name<U> {
                $name(self.0.each_ref().map(make))
            }

            /// Another entry in place of each.
            pub fn map<U>(self, make: impl FnMut(T) -> U) -> $name<U> {
                $name(self.0.map(make))
            }

            /// The entries with their kinds.
            pub fn iter(&self) -> impl Iterator<Item = ($kind, &T)> {
                $all.into_iter().zip(&self.0)
            }

            /// The entries with their kinds, to change.
            pub fn iter_mut(&mut self) -> impl Iterator<Item = ($kind, &mut T)> {
                $all.into_iter().zip(&mut self.0)
            }

            /// The entries alone.
            pub fn values(&self) -> impl Iterator<Item = &T> {
                self.0.iter()
            }

            /// The entries alone, to change.
            pub fn values_mut(&mut self) -> impl Iterator<Item = &mut T> {
                self.0.iter_mut()
            }
        }

        impl<T> IntoIterator for $name<T> {
            type Item = ($kind, T);
            type IntoIter = std::iter::Zip<std::array::IntoIter<$kind, $count>, std::array::IntoIter<T, $count>>;
            fn into_iter(self) -> Self::IntoIter {
                $all.into_iter().zip(self.0)
            }
        }

        impl<T, K: Into<$kind>> Index<K> for $name<T> {
            type Output = T;
            fn index(&self, kind: K) -> &T {
                &self.0[Self::place(kind.into())]
            }
        }

        impl<T, K: Into<$kind>> IndexMut<K> for $name<T> {
            fn index_mut(&mut self, kind: K) -> &mut T {
                &mut self.0[Self::place(kind.into())]
            }
        }
    };
}

by_variant! {
    /// Something for each kind of part.
    ByKind, PartKind, KINDS, 5
}

by_variant! {
    /// Something for each of the three kinds of which every club takes one.
    ByMain, MainKind, MAIN, 3
}

impl<T> ByMain<T> {
    /// One entry for each kind.
    pub const fn new(head: T, shaft: T, grip: T) -> Self {
        Self([head, shaft, grip])
    }

    /// With entries for the other kinds.
    pub fn and(self, tips: T, adapters: T) -> ByKind<T> {
        let [heads, shafts, grips] = self.0;
        ByKind([heads, shafts, grips, tips, adapters])
    }
}

/// A number in a list, in 32 bits: the search keeps millions of them, and they are half as large as a `usize`.
macro_rules! number {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
        pub struct $name(u32);

        impl $name {
            /// From a place in a list. No list here has anywhere near 2³² entries: each would be tens of gigabytes.
            pub const fn of(at: usize) -> Self {
                debug_assert!(at <= u32::MAX as usize);
                Self(at as u32)
            }

            /// The place in the list. A `usize` has 32 bits at least wherever this runs.
            pub const fn index(self) -> usize {
                self.0 as usize
            }
        }
    };
}

number! {
    /// A type of part: those of one kind that are alike in every club. Numbered by kind, for tip weights as in
    /// [`Stock::tips`](crate::Stock::tips).
    Ty
}

number! {
    /// The place of a candidate in its club's list of one kind.
    Place
}

number! {
    /// A level of shaft residual: its place among the distinct residuals of a set, ascending.
    Level
}

number! {
    /// The place of a type, or of a pair of tip weights, in the list of what is in stock.
    Slot
}

/// How many, in the 64 bits in which products of counts are taken; a `usize` has no more of them wherever this runs.
pub(crate) const fn count(of: usize) -> u64 {
    of as u64
}

/// Something for each type of a kind.
#[derive(Debug, PartialEq, Eq)]
pub struct PerType<T>(Vec<T>);

impl<T> Default for PerType<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T: Clone> Clone for PerType<T> {
    fn clone(&self) -> Self {
        Self(self.0.clone())
    }

    fn clone_from(&mut self, source: &Self) {
        self.0.clone_from(&source.0);
    }
}

/// A figure for each type of each kind.
pub type ByType<T> = ByKind<PerType<T>>;

impl<T> PerType<T> {
    /// The same value for every one of `count` types.
    pub fn new(types: usize, value: T) -> Self
    where
        T: Clone,
    {
        Self(vec![value; types])
    }

    /// How many types there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is no type.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Takes up one more type; its number.
    pub fn push(&mut self, value: T) -> Ty {
        self.0.push(value);
        Ty::of(self.0.len() - 1)
    }

    /// The numbers of all types.
    pub fn types(&self) -> impl DoubleEndedIterator<Item = Ty> + use<T> {
        (0..self.0.len()).map(Ty::of)
    }

    /// The entries with their types.
    pub fn typed(&self) -> impl Iterator<Item = (Ty, &T)> {
        self.types().zip(&self.0)
    }

    /// The entries alone.
    pub fn iter(&self) -> std::slice::Iter<'_, T> {
        self.0.iter()
    }

    /// The entries alone, to change.
    pub fn iter_mut(&mut self) -> std::slice::IterMut<'_, T> {
        self.0.iter_mut()
    }

    /// Another figure for each entry.
    pub fn each<U>(&self, make: impl FnMut(&T) -> U) -> PerType<U> {
        PerType(self.0.iter().map(make).collect())
    }

    /// Forgets all types but these; those that stay are numbered from the first again.
    pub fn retain(&mut self, kept: &PerType<bool>) {
        let mut kept = kept.iter();
        self.0.retain(|_| kept.next().copied().unwrap_or(false));
    }
}

impl<T> Extend<T> for PerType<T> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, more: I) {
        self.0.extend(more);
    }
}

impl<T> FromIterator<T> for PerType<T> {
    fn from_iter<I: IntoIterator<Item = T>>(all: I) -> Self {
        Self(all.into_iter().collect())
    }
}

impl<'a, T> IntoIterator for &'a PerType<T> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl<'a, T> IntoIterator for &'a mut PerType<T> {
    type Item = &'a mut T;
    type IntoIter = std::slice::IterMut<'a, T>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter_mut()
    }
}

impl<T> Index<Ty> for PerType<T> {
    type Output = T;
    fn index(&self, ty: Ty) -> &T {
        &self.0[ty.index()]
    }
}

impl<T> IndexMut<Ty> for PerType<T> {
    fn index_mut(&mut self, ty: Ty) -> &mut T {
        &mut self.0[ty.index()]
    }
}
