//! The form in which facts are declared.

/// Declares an enumeration of facts. The code of a member is the area, a point, and the member's name in small letters:
/// `Weak` of the area `loft_check` is `loft_check.weak`. Its figures are its fields.
///
/// A test of the whole program reads these declarations and holds that the crate `words` has a text for every member, and that
/// no text uses a figure which its member does not have.
#[macro_export]
macro_rules! facts {
    ($(#[$doc:meta])* $vis:vis enum $name:ident : $area:literal {
        $($(#[$member_doc:meta])* $member:ident $({ $($(#[$field_doc:meta])* $field:ident : $type:ty),* $(,)? })?),* $(,)?
    }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq)]
        $vis enum $name {
            $($(#[$member_doc])* $member $({ $($(#[$field_doc])* $field: $type),* })?),*
        }

        impl $crate::Facts for $name {
            const AREA: &'static str = $area;
            const MEMBERS: &'static [(&'static str, &'static [&'static str])] =
                &[$((stringify!($member), &[$($(stringify!($field)),*)?])),*];
        }

        impl $crate::Fact for $name {
            fn told(&self) -> $crate::Told {
                match self {
                    $(Self::$member $({ $($field),* })? =>
                        $crate::Told::member($area, stringify!($member))$($(.with(stringify!($field), $field))*)?),*
                }
            }
        }

        impl $crate::ToFigure for $name {
            fn to_figure(&self) -> $crate::Figure {
                $crate::Figure::Fact($crate::Fact::told(self))
            }
        }

        impl From<$name> for $crate::Told {
            fn from(fact: $name) -> Self {
                $crate::Fact::told(&fact)
            }
        }

        impl From<$name> for $crate::Refusal {
            fn from(fact: $name) -> Self {
                Self::new(&fact)
            }
        }

        impl $crate::serde::Serialize for $name {
            fn serialize<S: $crate::serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                $crate::serde::Serialize::serialize(&$crate::Fact::told(self), serializer)
            }
        }

        impl $crate::utoipa::PartialSchema for $name {
            fn schema() -> $crate::utoipa::openapi::RefOr<$crate::utoipa::openapi::schema::Schema> {
                $crate::schema_of::<Self>()
            }
        }

        impl $crate::utoipa::ToSchema for $name {}
    };
}
