// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/digest.h"

#include <catch2/catch.hpp>

using namespace qw;

TEST_CASE("SHA-256 of the published examples") {
    // NIST, examples to FIPS 180-4: one block, two blocks; the empty message and a million times "a" from NIST's test vectors.
    CHECK(sha256_of("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(sha256_of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") == "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(sha256_of("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    Sha256 digest;
    for (int i = 0; i < 1000; ++i) digest.add(std::string(1000, 'a'));
    CHECK(digest.hex() == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("a digest goes on after it was asked, and so does its copy") {
    Sha256 first;
    first.add("ab");
    const std::string asked = first.hex();
    CHECK(first.hex() == asked);
    Sha256 second(first), third;
    third = first;
    first.add("c");
    second.add("d");
    third.add("c");
    CHECK(first.hex() == sha256_of("abc"));
    CHECK(second.hex() == sha256_of("abd"));
    CHECK(third.hex() == sha256_of("abc"));
}
