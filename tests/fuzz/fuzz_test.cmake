# Builds the fuzzers and lets each search for SECONDS, all of them at once; any crash, leak or fault ends the test.
function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE status)
  if(NOT status EQUAL 0)
    string(REPLACE ";" " " words "${ARGN}")
    message(FATAL_ERROR "exit status ${status}: ${words}")
  endif()
endfunction()

run(${CMAKE_COMMAND} -S ${SOURCE} -B ${BUILD} -G Ninja -DCMAKE_CXX_COMPILER=${CLANG} -DFAIRBLADE_FUZZ=ON -DFAIRBLADE_AT_ONCE=ON)
run(${CMAKE_COMMAND} --build ${BUILD})
# A plan to begin from, which no run commits.
run(${PROGRAM} plan ${SOURCE}/tests/fuzz/small.csv --quiet -o ${BUILD}/small)
file(COPY ${BUILD}/small/plan.json DESTINATION ${BUILD}/plans)
# What a search finds stays in the build folder; the seeds are only read.
set(commands)
foreach(target job_reader csv_reader whole_plan frozen_plan)
  set(finds ${BUILD}/finds/${target})
  file(MAKE_DIRECTORY ${finds})
  set(longest 60000)
  if(target STREQUAL frozen_plan)
    set(longest 160000)  # the plan of two stations
  endif()
  list(APPEND commands COMMAND ${BUILD}/tests/fuzz/fuzz_${target} -max_total_time=${SECONDS} -timeout=60 -rss_limit_mb=4096 -max_len=${longest}
       -dict=${SOURCE}/tests/fuzz/fairblade.dict -artifact_prefix=${finds}- -print_final_stats=1 ${finds} ${SOURCE}/tests/refused
       ${SOURCE}/profiles/whimbrel ${SOURCE}/profiles/turnstone ${SOURCE}/profiles/dunlin ${BUILD}/plans)
endforeach()
execute_process(${commands} RESULTS_VARIABLE results ERROR_FILE ${BUILD}/fuzz.log)
file(STRINGS ${BUILD}/fuzz.log words REGEX "stat::|SUMMARY|ERROR|broken:")
foreach(line IN LISTS words)
  message("${line}")
endforeach()
foreach(status IN LISTS results)
  if(NOT status EQUAL 0)
    message(FATAL_ERROR "a fuzzer ended with ${status}: see ${BUILD}/fuzz.log, and the input beside ${BUILD}/finds")
  endif()
endforeach()
