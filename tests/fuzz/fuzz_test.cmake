# Lets each fuzzer search for SECONDS, all of them at once; any crash, leak or fault ends the test.
string(REPLACE "|" ";" TARGETS "${TARGETS}")
set(found ${FUZZERS}/found)
# A plan to begin from, which no run commits.
execute_process(COMMAND ${PROGRAM} plan ${SOURCE}/tests/fuzz/small.csv --quiet -o ${found}/small COMMAND_ERROR_IS_FATAL ANY)
file(COPY ${found}/small/plan.json DESTINATION ${found}/plans)
# What a search finds stays in the build folder; the seeds are only read.
set(commands)
foreach(target IN LISTS TARGETS)
  set(finds ${found}/${target})
  file(MAKE_DIRECTORY ${finds})
  set(longest 60000)
  if(target STREQUAL frozen_plan)
    set(longest 160000)  # the plan of two stations
  endif()
  list(APPEND commands COMMAND ${FUZZERS}/fuzz_${target} -max_total_time=${SECONDS} -timeout=60 -rss_limit_mb=4096 -max_len=${longest}
       -dict=${SOURCE}/tests/fuzz/fairblade.dict -artifact_prefix=${finds}- -print_final_stats=1 ${finds} ${SOURCE}/tests/refused
       ${SOURCE}/profiles/whimbrel ${SOURCE}/profiles/turnstone ${SOURCE}/profiles/dunlin ${found}/plans)
endforeach()
execute_process(${commands} RESULTS_VARIABLE results ERROR_FILE ${found}/fuzz.log)
file(STRINGS ${found}/fuzz.log words REGEX "stat::|SUMMARY|ERROR|broken:")
foreach(line IN LISTS words)
  message("${line}")
endforeach()
foreach(status IN LISTS results)
  if(NOT status EQUAL 0)
    message(FATAL_ERROR "a fuzzer ended with ${status}: see ${found}/fuzz.log, and the input beside ${found}")
  endif()
endforeach()
