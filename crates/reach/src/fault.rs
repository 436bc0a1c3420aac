//! What goes wrong on the way to an encrypted connection.

use fact::facts;

facts! {
    /// Why this machine cannot be reached as it was asked to be.
    pub enum ReachFault: "reach_fault" {
        /// A file of the root or of a certificate cannot be read or written.
        File {
            /// Where it is.
            path: String,
            /// What the system said.
            log: String,
        },
        /// The root's key is there without its certificate, or the other way round.
        HalfARoot {
            /// What is missing.
            path: String,
        },
        /// What is in a file is no certificate or no key.
        NotReadable {
            /// Where it is.
            path: String,
            /// What was wrong with it.
            log: String,
        },
        /// A name that the root may not vouch for.
        NotCovered {
            /// The name as the settings have it, such as `bench.shop.example`.
            name: String,
            /// Folder of the root.
            folder: String,
        },
        /// A key that is not that of its certificate, or a certificate that cannot be used.
        Unusable {
            /// What was said of it.
            log: String,
        },
        /// An address that cannot be listened on.
        Listen {
            /// The address.
            place: String,
            /// What the system said.
            log: String,
        },
        /// A name that cannot be announced.
        Announce {
            /// The name with its `.local`.
            name: String,
            /// What was said of it.
            log: String,
        },
    }
}
