// Product: the files that a job was read from, each with a digest of its bytes, so that a later run can tell whether
// they are still what they were. Verbs: digest_of_file,
// sources_of, state_of.
//
// The digest is FNV-1a of 64 bits (Fowler, Noll and Vo; RFC 9923), in 16 hexadecimal digits: it tells an edit from
// none, and is no proof against someone who wants to deceive.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "job/job.hpp"

namespace fairblade::job {

struct Source {
  std::string file;    ///< as it was given
  std::string digest;  ///< FNV-1a, 64 bits, in hexadecimal; empty where the file could not be read again
};

/// Of a file's bytes, as in Source; nothing where it cannot be read.
std::optional<std::string> digest_of_file(const std::string& path);

/// The job file, and its readings file where it has one.
std::vector<Source> sources_of(const Job& job);

enum class SourceState { same, changed, gone };
/// What has become of it; looked for where it was given, from the folder that this runs in.
SourceState state_of(const Source& source);

}  // namespace fairblade::job
