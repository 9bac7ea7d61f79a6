# SPDX-License-Identifier: GPL-3.0-or-later
# The rooms that read bytes from outside once more under ASan and UBSan, and their unit tests linked with them, a program a
# room. Test code and the other rooms are linked as they are: what they do with memory passes through ASan's allocator all the
# same, and their indices are checked by the standard library.
set(QW_SANITIZED_SOURCES)
set(QW_SANITIZED_LIBRARIES)
foreach(name ${QW_READING_ROOMS})
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
add_library(qw_sanitized OBJECT ${QW_SANITIZED_SOURCES})
target_include_directories(qw_sanitized PRIVATE ${CMAKE_SOURCE_DIR}/src)
target_link_libraries(qw_sanitized PRIVATE ${QW_SANITIZED_LIBRARIES})
target_compile_options(qw_sanitized PRIVATE ${QW_SANITIZE} -O1)
target_precompile_headers(qw_sanitized PRIVATE ${CMAKE_SOURCE_DIR}/src/precompiled.h)

foreach(name ${QW_READING_ROOMS})
  if(NOT TARGET tests_of_${name})
    continue()
  endif()
  # The rooms under sanitizers stand first, and as objects: of what is there twice the linker takes theirs.
  add_executable(test_sanitized_${name} $<TARGET_OBJECTS:qw_sanitized> $<TARGET_OBJECTS:tests_of_${name}>)
  if(name IN_LIST QW_PIXEL_TESTS)
    target_sources(test_sanitized_${name} PRIVATE $<TARGET_OBJECTS:tests_artwork_files>)
  endif()
  set_target_properties(test_sanitized_${name} PROPERTIES LINKER_LANGUAGE CXX)
  target_link_libraries(test_sanitized_${name} PRIVATE qw_release qw_test_support ${QW_SANITIZED_LIBRARIES} PkgConfig::PNG)
  target_link_options(test_sanitized_${name} PRIVATE -fsanitize=address,undefined)
  # [many]: the same code on many papers, sizes or pictures, which a single one of them shows as well.
  add_test(NAME sanitized.${name} COMMAND test_sanitized_${name} "~[many]")
  set_tests_properties(sanitized.${name} PROPERTIES LABELS sanitized
    ENVIRONMENT "ASAN_OPTIONS=detect_leaks=1:strict_string_checks=1;UBSAN_OPTIONS=print_stacktrace=1;LSAN_OPTIONS=print_suppressions=0:suppressions=${CMAKE_CURRENT_SOURCE_DIR}/leaks-of-libraries.supp")
endforeach()
