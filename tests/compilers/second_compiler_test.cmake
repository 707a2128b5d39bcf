# Builds the program with a second compiler as well, warnings errors, and has both work through the demos.
execute_process(COMMAND ${CMAKE_COMMAND} -S ${SOURCE} -B ${BUILD} -G Ninja -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_CXX_FLAGS_RELEASE=-O1
                -DFAIRBLADE_TESTS=OFF -DFAIRBLADE_DEVELOPMENT=ON -DFAIRBLADE_AT_ONCE=ON COMMAND_ERROR_IS_FATAL ANY OUTPUT_QUIET)
execute_process(COMMAND ${CMAKE_COMMAND} --build ${BUILD} --target fairblade COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${PYTHON} ${SOURCE}/tests/compilers/same_plans.py ${PROGRAM} ${BUILD}/fairblade ${SOURCE}/profiles
                COMMAND_ERROR_IS_FATAL ANY)
