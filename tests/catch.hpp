// One door for Catch2: version 2 (Debian 12) and version 3 (Debian 13) put their headers in different places.
#pragma once
#if __has_include(<catch2/catch_test_macros.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
