// SPDX-License-Identifier: GPL-3.0-or-later
// What every test file includes, compiled once.
#pragma once

#include "../../src/precompiled.h"

#include <catch2/catch.hpp>
