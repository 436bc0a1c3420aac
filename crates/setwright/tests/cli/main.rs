//! Goal: everything at a terminal, with the real program: answers, exit codes, words on standard error, one JSON
//! document on standard output where it was asked for. Method: each test has a folder and a database of its own.

mod adapters;
mod archive;
mod backup;
mod calc;
mod clubs;
mod customer;
mod encrypted;
mod frequency;
mod gates;
mod half_quanta;
mod job;
mod key;
mod learned;
mod list;
mod operate;
mod order;
mod packaged;
mod place;
mod price;
mod refusals;
mod run;
mod scales;
mod simulate;
mod work;
