// The offsets of a form, for the screen, a spreadsheet and programs. Verbs: form_offsets_text, _csv, _json.
#pragma once
#include <string>

#include "target/form_offsets.hpp"

namespace fairblade::report {

/// A table in the unit that was asked for, and the figures a yard wants beside it.
std::string form_offsets_text(const target::FormOffsets& offsets);
/// The same table; the header names the unit.
std::string form_offsets_csv(const target::FormOffsets& offsets);
/// mm and mm².
std::string form_offsets_json(const target::FormOffsets& offsets);

}  // namespace fairblade::report
