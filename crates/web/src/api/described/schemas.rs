//! Schemas that a validator and a generated client can work with, where the derive gives others.
//!
//! For an enum that is told apart by a field (`kind`), the derive writes each variant as "all of: the struct, and an object
//! with the field". Where the struct refuses unknown fields, nothing can be both: the field is unknown to the struct. Here
//! the field moves into the struct's own schema, each variant becomes a schema with a name, and the union says by which
//! field it is told apart.
//!
//! An enum whose variants are told apart by their only field (`{"part": …}`) gets a name for each variant as well, so that
//! a generated client does not count them through.

use serde_json::Value;
use std::collections::BTreeMap;
use utoipa::openapi::schema::{AdditionalProperties, AllOf, Discriminator, Object, OneOf, Schema};
use utoipa::openapi::{Components, Ref, RefOr};

type Schemas = BTreeMap<String, RefOr<Schema>>;

/// Rewrites the unions, and moves what is said of an optional reference to where a reader looks for it.
pub(super) fn mend(components: &mut Components) {
    let schemas = &mut components.schemas;
    let uses = uses(schemas);
    let unions: Vec<String> =
        schemas.iter().filter(|(_, s)| matches!(s, RefOr::T(Schema::OneOf(_)))).map(|(name, _)| name.clone()).collect();
    for name in unions {
        let Some(RefOr::T(Schema::OneOf(mut union))) = schemas.remove(&name) else { continue };
        close_union(&name, &mut union, schemas, &uses);
        schemas.insert(name, RefOr::T(Schema::OneOf(union)));
    }
    for schema in schemas.values_mut() {
        tidy_fields(schema);
    }
}

/// A variant that is told apart by a field: the field and its value.
fn told_apart(object: &Object) -> Option<(String, String)> {
    object.properties.iter().find_map(|(field, schema)| match schema {
        RefOr::T(Schema::Object(Object { enum_values: Some(values), .. })) => match values.as_slice() {
            [value] => Some((field.clone(), value.as_str()?.to_owned())),
            _ => None,
        },
        _ => None,
    })
}

fn close_union(name: &str, union: &mut OneOf, schemas: &mut Schemas, uses: &BTreeMap<String, usize>) {
    let mut by = None;
    let mut mapping = BTreeMap::new();
    for variant in &mut union.items {
        let named = match variant {
            RefOr::T(Schema::AllOf(AllOf { items, .. })) => tag_struct(items, schemas, uses),
            RefOr::T(Schema::Object(object)) => name_variant(name, object, schemas),
            _ => None,
        };
        let Some((own, field, value)) = named else {
            name_by_only_field(name, variant, schemas);
            continue;
        };
        let to = Ref::from_schema_name(&own);
        mapping.insert(value, to.ref_location.clone());
        *variant = RefOr::Ref(to);
        by = Some(field);
    }
    // Only where every variant has its name can a reader choose by the field alone.
    if let Some(field) = by
        && mapping.len() == union.items.len()
    {
        union.discriminator = Some(Discriminator::with_mapping(field, mapping));
    }
}

/// Makes a variant that is written out in the union a schema of its own: `Gate` with `waits` is `GateWaits`. Gives its
/// name, the field that tells it apart and the value.
fn name_variant(union: &str, object: &mut Object, schemas: &mut Schemas) -> Option<(String, String, String)> {
    let (field, value) = told_apart(object)?;
    describe_tag(&mut object.properties, &field);
    let own = format!("{union}{}", in_capitals(&value));
    if schemas.contains_key(&own) {
        return None;
    }
    schemas.insert(own.clone(), RefOr::T(Schema::Object(std::mem::take(object))));
    Some((own, field, value))
}

/// Moves the field that tells apart into a struct that is used by this union alone. Gives the struct's name, the field and
/// its value.
fn tag_struct(
    items: &[RefOr<Schema>],
    schemas: &mut Schemas,
    uses: &BTreeMap<String, usize>,
) -> Option<(String, String, String)> {
    let [RefOr::Ref(to), RefOr::T(Schema::Object(tag))] = items else { return None };
    let name = to.ref_location.rsplit('/').next()?.to_owned();
    let (field, value) = told_apart(tag)?;
    if uses.get(&name) != Some(&1) {
        return None;
    }
    let Some(RefOr::T(Schema::Object(own))) = schemas.get_mut(&name) else { return None };
    own.properties.insert(field.clone(), tag.properties.get(&field)?.clone());
    describe_tag(&mut own.properties, &field);
    own.required.insert(0, field.clone());
    Some((name, field, value))
}

/// Makes a variant with one field a schema of its own, and what is written out in that field too: `Scanned` with `part` is
/// `ScannedPart`, and what it holds `ScannedPartValue`.
fn name_by_only_field(union: &str, variant: &mut RefOr<Schema>, schemas: &mut Schemas) {
    let RefOr::T(Schema::Object(object)) = variant else { return };
    let [field] = object.required.as_slice() else { return };
    let own = format!("{union}{}", in_capitals(field));
    let value = format!("{own}Value");
    if object.properties.len() != 1 || schemas.contains_key(&own) || schemas.contains_key(&value) {
        return;
    }
    for held in object.properties.values_mut() {
        if let RefOr::T(Schema::Object(inner)) = held
            && !inner.properties.is_empty()
        {
            let mut to = Ref::from_schema_name(&value);
            to.description = inner.description.clone().unwrap_or_default();
            schemas.insert(value.clone(), std::mem::replace(held, RefOr::Ref(to)));
        }
    }
    schemas.insert(own.clone(), RefOr::T(Schema::Object(std::mem::take(object))));
    *variant = RefOr::Ref(Ref::from_schema_name(own));
}

fn describe_tag(properties: &mut BTreeMap<String, RefOr<Schema>>, field: &str) {
    if let Some(RefOr::T(Schema::Object(tag))) = properties.get_mut(field) {
        tag.description.get_or_insert_with(|| "Which of the forms this is.".to_owned());
    }
}

/// `tip_weight` → `TipWeight`.
fn in_capitals(value: &str) -> String {
    value
        .split('_')
        .flat_map(|word| {
            let mut letters = word.chars();
            letters.next().into_iter().flat_map(char::to_uppercase).chain(letters)
        })
        .collect()
}

/// How often each schema is referred to from the schemas.
fn uses(schemas: &Schemas) -> BTreeMap<String, usize> {
    let mut uses = BTreeMap::new();
    for schema in schemas.values() {
        each(schema, &mut |s| {
            if let RefOr::Ref(to) = s {
                *uses.entry(to.ref_location.rsplit('/').next().unwrap_or_default().to_owned()).or_default() += 1;
            }
        });
    }
    uses
}

/// Calls a function with a schema and all within it.
fn each(schema: &RefOr<Schema>, f: &mut impl FnMut(&RefOr<Schema>)) {
    f(schema);
    match schema {
        RefOr::T(Schema::Object(object)) => {
            object.properties.values().for_each(|s| each(s, f));
            if let Some(AdditionalProperties::RefOr(s)) = object.additional_properties.as_deref() {
                each(s, f);
            }
        }
        RefOr::T(Schema::Array(list)) => {
            if let utoipa::openapi::schema::ArrayItems::RefOrSchema(item) = &list.items {
                each(item, f);
            }
        }
        RefOr::T(Schema::OneOf(of)) => of.items.iter().for_each(|s| each(s, f)),
        RefOr::T(Schema::AllOf(of)) => of.items.iter().for_each(|s| each(s, f)),
        RefOr::T(Schema::AnyOf(of)) => of.items.iter().for_each(|s| each(s, f)),
        _ => {}
    }
}

/// "This, or null" carries what is said of the field on the reference inside; readers look for it on the field. And "left
/// out: null" says nothing, while some generators take a field with a default for one that is always there.
fn tidy_fields(schema: &mut RefOr<Schema>) {
    match schema {
        RefOr::T(Schema::Object(object)) => {
            forget_null(&mut object.default);
            object.properties.values_mut().for_each(tidy_fields);
        }
        RefOr::T(Schema::Array(list)) => forget_null(&mut list.default),
        RefOr::T(Schema::AllOf(of)) => of.items.iter_mut().for_each(tidy_fields),
        RefOr::T(Schema::OneOf(of)) => {
            forget_null(&mut of.default);
            if let [RefOr::Ref(to), RefOr::T(_)] = of.items.as_mut_slice()
                && of.description.is_none()
                && !to.description.is_empty()
            {
                of.description = Some(std::mem::take(&mut to.description));
            }
            of.items.iter_mut().for_each(tidy_fields);
        }
        _ => {}
    }
}

fn forget_null(default: &mut Option<Value>) {
    if default.as_ref().is_some_and(Value::is_null) {
        *default = None;
    }
}
