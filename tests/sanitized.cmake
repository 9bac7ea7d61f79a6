# SPDX-License-Identifier: GPL-3.0-or-later
# All rooms once more under ASan and UBSan, linked with all unit tests into one program.
set(QW_SANITIZED_SOURCES)
set(QW_SANITIZED_LIBRARIES)
foreach(name ${QW_ROOMS})
  if(name STREQUAL "cli")  # has no unit tests: the whole program is tested by itself
    continue()
  endif()
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/src/${name}/*.cpp)
  list(APPEND QW_SANITIZED_SOURCES ${sources})
  list(APPEND QW_SANITIZED_LIBRARIES ${QW_LIBRARIES_${name}})
endforeach()
list(REMOVE_DUPLICATES QW_SANITIZED_LIBRARIES)

# Of UBSan the checks that find what ASan does not: a null pointer that is used stops the program under ASan as well, and
# checking each pointer, object and virtual table again makes two thirds of the build. The rooms' warnings were shown
# when they were built as they are.
set(QW_SANITIZE -fsanitize=address,bounds,shift,signed-integer-overflow,integer-divide-by-zero,float-cast-overflow,bool,enum,return,unreachable
  -fno-sanitize-recover=all -g1 -fno-omit-frame-pointer -w)

set_source_files_properties(${QW_ALONE} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
add_library(qw_sanitized STATIC ${QW_SANITIZED_SOURCES})
target_include_directories(qw_sanitized PUBLIC ${CMAKE_SOURCE_DIR}/src)
target_link_libraries(qw_sanitized PUBLIC ${QW_SANITIZED_LIBRARIES})
target_compile_options(qw_sanitized PRIVATE ${QW_SANITIZE} -O1)
target_precompile_headers(qw_sanitized PRIVATE ${CMAKE_SOURCE_DIR}/src/precompiled.h)

add_executable(test_sanitized ${QW_UNIT_OBJECTS} $<TARGET_OBJECTS:qw_test_support>)
set_target_properties(test_sanitized PROPERTIES LINKER_LANGUAGE CXX)
target_link_libraries(test_sanitized PRIVATE qw_sanitized PkgConfig::PNG)
target_link_options(test_sanitized PRIVATE -fsanitize=address,undefined)
# [many]: the same code on many papers, sizes or pictures, which a single one of them shows as well.
add_test(NAME sanitized.units COMMAND test_sanitized "~[many]")
set_tests_properties(sanitized.units PROPERTIES LABELS sanitized
  ENVIRONMENT "ASAN_OPTIONS=detect_leaks=1:strict_string_checks=1;UBSAN_OPTIONS=print_stacktrace=1;LSAN_OPTIONS=print_suppressions=0:suppressions=${CMAKE_CURRENT_SOURCE_DIR}/leaks-of-libraries.supp")
