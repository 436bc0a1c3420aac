### What a person at a step should have in mind

caution-says-cutting = Wear eye protection, clamp the work, run extraction and a particle respirator. Never cut or sand composite dry without them: the tool maker's sheet and the local safety rules come first.
caution-says-epoxy = Wear nitrile or butyl gloves and air the room: epoxy makes skin allergic, and a full cup can heat up until it smokes. Follow the adhesive's sheet and the local safety rules.
caution-says-solvent = Solvent burns, and its vapour harms: air the room, wear gloves, keep flames and heat guns away. Follow the product's sheet and the local safety rules.
caution-says-bending = Wear eye protection and clamp the head: too much bend, or heat, can crack a hosel. Stay within the head maker's limit; if in doubt, ask a qualified person.
caution-says-swing = Nobody swings this club before the adhesive maker's full cure. If the joint is in doubt, ask a qualified person.
caution-says-turning = Wear eye protection, keep sleeves and hair away from the belt, run extraction. Follow the tool's sheet and the local safety rules.
caution-says-preparing = Wear eye protection, gloves and a particle respirator; take the dust off where it rises. A grinder's rest stands within an eighth of an inch of its wheel, heat away from composite: the makers' sheets and the local rules say more.
caution-says-lead = Lead is toxic: wear gloves, wash your hands before you eat or drink, and never sweep it up dry. Follow the product's sheet and the local safety rules.
caution-says-stripping = Cut away from your hand with a hook blade, gloves on; on composite do not press, a nick weakens it. Let old solvent dry out before you grip, and follow the product's sheet.
caution-says-damage = Nobody swings a club with a loose or cracked part: a head that flies off hurts people. Wear gloves and eye protection against splinters; if in doubt, ask a qualified person.
caution-says-pulling = Hot hosel and epoxy smoke: heat-proof gloves, eye protection, fresh air; on composite use little heat, pull straight and never twist. Follow the makers' sheets and the local safety rules; if in doubt, ask a qualified person.
