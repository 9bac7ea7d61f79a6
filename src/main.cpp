// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/app.h"

int main(int argc, char** argv) { return qw::cli::run(argc, argv, {QW_VERSION, QW_PIPELINE_BESIDE_SOURCE}); }
