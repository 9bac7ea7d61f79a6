// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/content_tokens.h"

#include "proof/damage.h"
#include "proof/operators.h"

#include <memory>

namespace qw::proof {

double Operands::number(std::size_t count, std::size_t index) const {
    if (numbers.size() < count) throw Unreadable("an operator has too few numbers in front of it");
    return numbers[numbers.size() - count + index];
}

Spot Operands::spot(std::size_t count, std::size_t index) const { return {number(count, index), number(count, index + 1)}; }

void Operands::clear() {
    numbers.clear();
    name.clear();
    text = false;
}

namespace {

constexpr std::size_t most_numbers = 8;
constexpr std::size_t longest_inline_dictionary = 65536;

class TokenWalk {
public:
    TokenWalk(const std::string& content, ContentReader& reader, const std::function<void()>& spend)
        // The tokenizer only reads, but Buffer knows no read-only memory.
        : buffer_(reinterpret_cast<unsigned char*>(const_cast<char*>(content.data())), content.size()),
          input_(std::make_shared<BufferInputSource>("content", &buffer_)), reader_(reader), spend_(spend) {
        tokens_.allowEOF();
    }

    void run() {
        for (auto token = next(); token.getType() != Tokens::tt_eof; token = next()) take(token);
    }

private:
    using Tokens = QPDFTokenizer;

    Tokens::Token next() {
        spend_();
        return tokens_.readToken(input_, context_, true);
    }

    void take(const Tokens::Token& token) {
        switch (token.getType()) {
            case Tokens::tt_array_open:
            case Tokens::tt_dict_open: ++depth_; break;
            case Tokens::tt_array_close:
            case Tokens::tt_dict_close: depth_ = depth_ > 0 ? depth_ - 1 : 0; break;
            case Tokens::tt_integer:
            case Tokens::tt_real: number(token.getValue()); break;
            case Tokens::tt_name:
                if (depth_ == 0) operands_.name = token.getValue();
                break;
            case Tokens::tt_string: operands_.text = operands_.text || !token.getValue().empty(); break;
            case Tokens::tt_word: word(token.getValue()); break;
            case Tokens::tt_bad:
                throw Unreadable("content cannot be read at byte " + std::to_string(input_->getLastOffset()));
            default: break;
        }
    }

    void number(const std::string& digits) {
        if (depth_ > 0) return;
        const auto value = read_number(digits);
        if (!value) throw Unreadable("content has a number out of range");
        if (operands_.numbers.size() == most_numbers) operands_.numbers.erase(operands_.numbers.begin());
        operands_.numbers.push_back(*value);
    }

    void word(const std::string& letters) {
        depth_ = 0;
        if (letters == "BI") inline_image();
        else reader_.operation(op(letters), operands_);
        operands_.clear();
    }

    void inline_image() {
        std::string dictionary;
        for (auto token = next(); !token.isWord("ID"); token = next()) {
            if (token.getType() == Tokens::tt_eof || dictionary.size() > longest_inline_dictionary)
                throw Unreadable("an inline image has no end");
            dictionary += token.getRawValue() + " ";
        }
        char space = 0;
        input_->read(&space, 1);
        tokens_.expectInlineImage(input_);
        auto data = next();
        if (data.getType() != Tokens::tt_inline_image) throw Unreadable("an inline image has no end");
        reader_.inline_image(Object::parse("<< " + dictionary + ">>"), data.getValue());
    }

    Buffer buffer_;
    std::shared_ptr<InputSource> input_;
    ContentReader& reader_;
    const std::function<void()>& spend_;
    Tokens tokens_;
    const std::string context_ = "content";
    Operands operands_;
    int depth_ = 0;
};

}  // namespace

void read_content(const std::string& content, ContentReader& reader, const std::function<void()>& spend) {
    TokenWalk(content, reader, spend).run();
}

}  // namespace qw::proof
