// Words in a text.
#pragma once
#include <string>

inline bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
