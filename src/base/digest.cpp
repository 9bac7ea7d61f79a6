// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/digest.h"

#include <openssl/evp.h>

#include <new>

namespace qw {

namespace {

/// Looked up once: OpenSSL 3 otherwise does so for every digest, which costs as much as a kilobyte of bytes.
const EVP_MD* algorithm() {
    static const EVP_MD* const fetched = EVP_MD_fetch(nullptr, "SHA256", nullptr);
    if (!fetched) throw std::bad_alloc();
    return fetched;
}

std::string in_hex(const unsigned char* raw, unsigned int size) {
    static constexpr char digits[] = "0123456789abcdef";
    std::string text(std::size_t{size} * 2, '0');
    for (unsigned int i = 0; i < size; ++i) {
        text[2 * i] = digits[raw[i] >> 4];
        text[2 * i + 1] = digits[raw[i] & 15];
    }
    return text;
}

}  // namespace

struct Sha256::State {
    EVP_MD_CTX* context = EVP_MD_CTX_new();
    State() {
        if (!context) throw std::bad_alloc();
    }
    ~State() { EVP_MD_CTX_free(context); }
    State(const State&) = delete;
    State& operator=(const State&) = delete;
};

Sha256::Sha256() : state_(std::make_unique<State>()) { EVP_DigestInit_ex(state_->context, algorithm(), nullptr); }
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
    return in_hex(raw, size);
}

std::string sha256_of(std::string_view text) {
    unsigned char raw[EVP_MAX_MD_SIZE];
    unsigned int size = 0;
    if (!EVP_Digest(text.data(), text.size(), raw, &size, algorithm(), nullptr)) throw std::bad_alloc();
    return in_hex(raw, size);
}

}  // namespace qw
