//! Goal: whatever is put in wrongly is refused in words that help, and nothing is lost or half saved.
//! Method: the whole site is asked as a tablet or a program asks it; after each refusal the picture of everything that
//! is saved must be the one from before.

mod answers;
mod disk;
mod figures;
mod files;
mod held;
mod two_tablets;
