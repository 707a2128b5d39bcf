// A form by its name or its thickness, as people write it. Verbs: form_named.
#pragma once
#include <string_view>

#include "base/fault.hpp"
#include "form/form.hpp"

namespace fairblade::form {

/// "0012" (also "NACA 0012"), "0012-45" (leading-edge index 4, greatest thickness at 0.5 of the chord), "12%", "0.12".
/// A fault, placed at the word itself, where it is none of these; a bare 12 is refused with what may have been meant.
Outcome<Form> form_named(std::string_view text);

}  // namespace fairblade::form
