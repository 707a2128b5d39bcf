// Private to the job room. Product: coats, fillers, workshop and print, out of a job's tree.
// Verbs: one per part. What the owner left out is a default, listed.
#pragma once
#include "job/job.hpp"
#include "job/reader.hpp"

namespace fairblade::job {

/// `root` is the job's object; each reads its own key there.
void read_coats(const Reader& reader, const Node& root, Job& job);
void read_fillers(const Reader& reader, const Node& root, Job& job);
void read_workshop(const Reader& reader, const Node& root, Job& job);
void read_print(const Reader& reader, const Node& root, Job& job);

}  // namespace fairblade::job
