# SPDX-License-Identifier: GPL-3.0-or-later
# All rooms and all unit tests once more as one program under ASan and UBSan. Unity files keep the second build short.
set(QW_SANITIZED_SOURCES)
set(QW_SANITIZED_LIBRARIES)
foreach(name ${QW_ROOMS})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/src/${name}/*.cpp)
  list(APPEND QW_SANITIZED_SOURCES ${sources})
  list(APPEND QW_SANITIZED_LIBRARIES ${QW_LIBRARIES_${name}})
endforeach()
list(REMOVE_DUPLICATES QW_SANITIZED_LIBRARIES)

add_executable(test_sanitized ${QW_SANITIZED_SOURCES} ${QW_UNIT_SOURCES} ${QW_SUPPORT} support/catch_main.cpp)
target_include_directories(test_sanitized PRIVATE ${CMAKE_SOURCE_DIR}/src ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(test_sanitized PRIVATE ${QW_SANITIZED_LIBRARIES} Catch2::Catch2)
target_compile_definitions(test_sanitized PRIVATE ${QW_TEST_PATHS} QW_SANITIZED=1)
target_compile_options(test_sanitized PRIVATE -fsanitize=address,undefined -fno-sanitize-recover=undefined -O1 -g1 -fno-omit-frame-pointer
  -Wno-maybe-uninitialized)  # g++ 12 finds it inside <regex> when it instruments
target_link_options(test_sanitized PRIVATE -fsanitize=address,undefined)
add_test(NAME sanitized.units COMMAND test_sanitized)
set_tests_properties(sanitized.units PROPERTIES LABELS sanitized
  ENVIRONMENT "ASAN_OPTIONS=detect_leaks=1:strict_string_checks=1;UBSAN_OPTIONS=print_stacktrace=1")
