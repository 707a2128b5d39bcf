// What can hurt people in this work, in the words that every printed thing repeats. Common practice, no source; data
// sheets, local law and the yard's own rules come first. Verbs: none, words alone.
#pragma once
#include <array>
#include <string_view>

namespace fairblade {

constexpr std::string_view cautions_first =
    "The data sheets of what you buy, and the law and the yard's rules where you are, come before anything written here.";

constexpr std::array<std::string_view, 9> cautions{
    "Epoxy sensitises for life: who becomes allergic is allergic for life. Gloves and covered skin; wash with soap and water, "
    "never with solvent. The dust of "
    "half-cured epoxy is the surest way to it.",
    "P3 masks for dust; organic vapour filters with P3 for solvents. Filler powder is dust too.",
    "Old antifouling is sanded wet, contained, and taken away as hazardous waste; yards and local law have their "
    "own rules.",
    "Treat old paint as leaded.",
    "Big pots of epoxy boil over: small batches, shallow trays, outdoors until cold.",
    "Never work under a hanging rudder.",
    "Fairing adds no strength. Cracks, a wet core or a corroded stock go to a surveyor first.",
    "A section is not a design. Balance, loads and the stock belong to a qualified designer.",
    "Gaps to skeg, hull and propeller are checked after paint, swung from lock to lock.",
};

}  // namespace fairblade
