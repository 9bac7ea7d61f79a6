// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/digest.h"

#include <openssl/evp.h>

#include <new>

namespace qw {

struct Sha256::State {
    EVP_MD_CTX* context = EVP_MD_CTX_new();
    State() {
        if (!context) throw std::bad_alloc();
    }
    ~State() { EVP_MD_CTX_free(context); }
    State(const State&) = delete;
    State& operator=(const State&) = delete;
};

Sha256::Sha256() : state_(std::make_unique<State>()) { EVP_DigestInit_ex(state_->context, EVP_sha256(), nullptr); }
Sha256::Sha256(const Sha256& other) : state_(std::make_unique<State>()) {
    EVP_MD_CTX_copy_ex(state_->context, other.state_->context);
}
Sha256& Sha256::operator=(const Sha256& other) {
    if (this != &other) EVP_MD_CTX_copy_ex(state_->context, other.state_->context);
    return *this;
}
Sha256::Sha256(Sha256&&) noexcept = default;
Sha256& Sha256::operator=(Sha256&&) noexcept = default;
Sha256::~Sha256() = default;

void Sha256::add(std::span<const std::byte> bytes) { EVP_DigestUpdate(state_->context, bytes.data(), bytes.size()); }
void Sha256::add(std::string_view text) { add(std::as_bytes(std::span(text.data(), text.size()))); }

std::string Sha256::hex() const {
    const Sha256 copy(*this);
    unsigned char raw[EVP_MAX_MD_SIZE];
    unsigned int size = 0;
    EVP_DigestFinal_ex(copy.state_->context, raw, &size);
    static constexpr char digits[] = "0123456789abcdef";
    std::string text;
    text.reserve(size * 2);
    for (unsigned int i = 0; i < size; ++i) {
        text += digits[raw[i] >> 4];
        text += digits[raw[i] & 15];
    }
    return text;
}

std::string sha256_of(std::string_view text) {
    Sha256 digest;
    digest.add(text);
    return digest.hex();
}

}  // namespace qw
