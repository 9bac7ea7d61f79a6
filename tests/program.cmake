# SPDX-License-Identifier: GPL-3.0-or-later
# Whole-program tests: the built quirewright and tools that judge from outside. The demo kits are released once, by the
# test "program.release", into the build folder; what judges them waits for it.
file(GLOB QW_PROGRAM_SOURCES CONFIGURE_DEPENDS program/*.cpp)
add_executable(test_program ${QW_PROGRAM_SOURCES})
target_link_libraries(test_program PRIVATE qw_release qw_test_support PkgConfig::PNG)
target_compile_options(test_program PRIVATE -O1)  # compares pixels
target_compile_definitions(test_program PRIVATE ${QW_TEST_PATHS} QW_RELEASED="${CMAKE_BINARY_DIR}/released")
add_dependencies(test_program quirewright)

function(program_test name)
  add_test(NAME program.${name} COMMAND test_program "[${name}]")
  set_tests_properties(program.${name} PROPERTIES LABELS program ${ARGN})
endfunction()
program_test(release FIXTURES_SETUP released)
foreach(name judges passage sheets bundle same-bytes print-size)
  program_test(${name} FIXTURES_REQUIRED released)
endforeach()
foreach(name arguments backs faults audit begin survival otherwise journals parts cut-and-folded proofing)
  program_test(${name})
endforeach()

# Everything that can be wrong with a kit, a release or a bundle, audited by the built program.
file(GLOB QW_CORPUS_SOURCES CONFIGURE_DEPENDS corpus/*.cpp)
add_executable(corpus ${QW_CORPUS_SOURCES} bundle/sample.cpp $<TARGET_OBJECTS:tests_artwork_files>)
target_link_libraries(corpus PRIVATE qw_engine qw_bundle qw_artwork qw_test_support ${QW_LIBRARIES_artwork} PkgConfig::PNG PkgConfig::QPDF)
set_target_properties(corpus PROPERTIES UNITY_BUILD OFF)  # each family names its own pages
target_compile_options(corpus PRIVATE -O1)
target_precompile_headers(corpus PRIVATE <algorithm> <filesystem> <functional> <map> <string> <vector> <nlohmann/json.hpp> <qpdf/QPDF.hh>)
target_compile_definitions(corpus PRIVATE ${QW_TEST_PATHS} POINTERHOLDER_TRANSITION=4)
add_dependencies(corpus quirewright)
add_test(NAME program.corpus COMMAND corpus --pdfs ${CMAKE_BINARY_DIR}/corpus-pdfs)
set_tests_properties(program.corpus PROPERTIES LABELS program FIXTURES_SETUP corpus-pdfs)
add_test(NAME program.zip-judges COMMAND corpus --judge zips)
set_tests_properties(program.zip-judges PROPERTIES LABELS program)

# What we say of PDFs against what others say of them: of every PDF of the corpus and the demo kits, and of documents that
# Debian packages bring (pipeline/set-up.sh), made by Ghostscript, Distiller, pdfTeX from 1.10b
# to 1.40.15, cairo, gropdf and ImageMagick.
file(GLOB QW_AGREEMENT_SOURCES CONFIGURE_DEPENDS agreement/*.cpp)
add_executable(agreement ${QW_AGREEMENT_SOURCES})
target_link_libraries(agreement PRIVATE qw_proof qw_engine qw_test_support)
target_compile_options(agreement PRIVATE -O0)
target_precompile_headers(agreement REUSE_FROM qw_test_support)
add_test(NAME program.agreement COMMAND agreement 150 ${CMAKE_BINARY_DIR}/corpus-pdfs ${CMAKE_BINARY_DIR}/released)
set_tests_properties(program.agreement PROPERTIES LABELS program FIXTURES_REQUIRED "corpus-pdfs;released")
set(QW_GRAPHVIZ_PDFS Agraph dotguide dottyguide leftyguide libguide neatoguide smyrna prune gvpr.3 gv.3tcl)
list(TRANSFORM QW_GRAPHVIZ_PDFS REPLACE "(.+)" "/usr/share/doc/graphviz/pdf/\\1.pdf")
add_test(NAME program.agreement-elsewhere COMMAND agreement 25 /usr/share/doc/groff-base
  /usr/share/doc/fonts-sil-andika/documentation/pdf ${QW_GRAPHVIZ_PDFS})
set_tests_properties(program.agreement-elsewhere PROPERTIES LABELS program)

# The report's page in a browser (tests/report/web).
add_test(NAME program.report-page COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/report/web/run.sh
  $<TARGET_FILE:quirewright> ${CMAKE_BINARY_DIR}/released ${CMAKE_BINARY_DIR}/report-page)
set_tests_properties(program.report-page PROPERTIES LABELS program FIXTURES_REQUIRED released)

# The longest first, so that at the end no processor waits for one of them: seconds of a quiet machine, roughly.
foreach(cost program.corpus=150 program.survival=60 unit.compose=45 sanitized.artwork=45 program.judges=40 sanitized.pdf=40 unit.journal=40
    sanitized.kit=35 program.same-bytes=30 program.faults=30 program.audit=30 unit.pdf=30 sanitized.bundle=25 program.parts=20 program.report-page=20 program.release=160)
  string(REPLACE "=" ";" cost ${cost})
  list(GET cost 0 name)
  list(GET cost 1 seconds)
  set_tests_properties(${name} PROPERTIES COST ${seconds})
endforeach()
