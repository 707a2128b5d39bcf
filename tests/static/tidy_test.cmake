# clang-tidy over the rooms, where asked for several files of one at a time, as the build has them in BUILD/src. Headers that the build
# reads once are read with each file instead: clang-tidy would search all of them every time, whichever the file includes.
file(READ ${BUILD}/compile_commands.json commands)
string(REGEX REPLACE " -Xclang -include(-pch)? -Xclang [^ ]+| -include [^ ]+cmake_pch[^ ]+" "" commands "${commands}")
file(WRITE ${BUILD}/tidy/compile_commands.json "${commands}")
file(READ ${SOURCE}/.clang-tidy settings)  # told, for a file in the build folder would not find them
execute_process(COMMAND ${RUN_TIDY} -quiet -j 2 -p ${BUILD}/tidy -clang-tidy-binary ${TIDY} -config "${settings}"
                -extra-arg=-Wno-unknown-warning-option  # options that only GCC knows
                ${SOURCE}/src/ ${BUILD}/src/ COMMAND_ERROR_IS_FATAL ANY)
