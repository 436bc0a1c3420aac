//! The whole program in a real browser: a club from its dry reading to its record, without scripts, on two tablets, on
//! small screens, by keyboard, without network.

mod access;
mod away;
mod club;
mod door;
mod first_hour;
mod gates;
mod hands;
mod harness;
mod hurry;
mod keys;
mod kinds;
mod legible;
mod let_in;
mod lost;
mod markup;
mod network;
mod one_screen;
mod pages;
mod printing;
mod ring;
mod scan;
mod screens;
mod touches;
mod weigh;
