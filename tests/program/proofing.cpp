// SPDX-License-Identifier: GPL-3.0-or-later
// What is printed and signed before sale: the proofing set shows every risk that it tells, its pages are those on sale, and
// signatures hold as long as their pages are the same.
#include "program/program.h"
#include "support/signed_form.h"

#include <catch2/catch.hpp>

using namespace qw;
using namespace qw::test;

namespace {

const Signature somewhat_aside{"200 mm", "8 in", "{ x: 0.5 mm, y: -0.5 mm }", "good"};

nlohmann::json audited(const std::string& options, const Path& folder) {
    return nlohmann::json::parse(quirewright("audit kit --out out --json " + options, folder).text);
}

}  // namespace

TEST_CASE("the proofing set shows all risks that are told, in the very pages that are sold", "[proofing]") {
    TestFolder folder;
    std::filesystem::rename(copy_of_kit("lamplight-mini", folder.path()), folder / "kit");
    const nlohmann::json set = audited("--proofing proofs.pdf", folder.path())["proofing"];
    std::set<std::string> told, shown;
    for (const auto& risk : set["risks"]) told.insert(risk.get<std::string>());
    int pages = 0;
    for (const auto& sheet : set["sheets"]) {
        pages += static_cast<int>(sheet["pages"].size());
        for (const auto& risk : sheet["shows"]) shown.insert(risk.get<std::string>());
    }
    CHECK(told == shown);
    for (const char* risk : {"edition letter borderless", "edition a4 bordered", "print-size a4", "register letter", "jig letter", "gauges a4",
                             "both-faces journal-pages", "pdf-artwork"})
        CHECK(told.count(risk) == 1);
    const Said check = run("qpdf --check proofs.pdf 2>&1", folder.path());
    CHECK(check.status == 0);
    const std::string info = run("pdfinfo proofs.pdf", folder.path()).text;
    const int all = std::stoi(info.substr(info.find("Pages:") + 6));
    CHECK(all > pages);
    // The last sheet of the set, as it is in its own file.
    const auto& last = set["sheets"].back();
    REQUIRE(quirewright("release kit --out out", folder.path()).status == 0);
    const std::string zip = "out/lamplight-mini/1.0.0/lamplight-mini-1.0.0.zip";
    REQUIRE(run("unzip -qqo " + zip + " -d sold", folder.path()).status == 0);
    const auto picture = [&](const std::string& file, int page) {
        return run("pdftoppm -r 50 -f " + std::to_string(page) + " -l " + std::to_string(page) + " " + quoted(file) + " | sha256sum", folder.path())
            .text;
    };
    CHECK(picture("proofs.pdf", all) == picture("sold/" + last["file"].get<std::string>(), last["pages"].back().get<int>()));
    // The same bytes once more.
    const std::string before = read(folder / "proofs.pdf");
    audited("--proofing proofs.pdf --jobs 1", folder.path());
    CHECK(read(folder / "proofs.pdf") == before);
    CHECK_FALSE(std::filesystem::exists(folder / "proofs.pdf.part"));
    CHECK(quirewright("audit kit --proofing no-such-folder/proofs.pdf", folder.path()).status == 3);
    CHECK(quirewright("audit out/lamplight-mini/1.0.0 --proofing other.pdf", folder.path()).status == 2);
}

TEST_CASE("signatures hold until their pages change, and nothing that was written is lost", "[proofing]") {
    TestFolder folder;
    std::filesystem::rename(copy_of_kit("lamplight-mini", folder.path()), folder / "kit");
    REQUIRE(audited("", folder.path()).contains("proofs") == false);
    CHECK(audited("--sign kit/proofs.yaml", folder.path()).contains("proofs") == false);
    const std::string written = signed_form(read(folder / "kit/proofs.yaml"), somewhat_aside);
    write(folder / "kit/proofs.yaml", written);
    const nlohmann::json first = audited("", folder.path());
    REQUIRE(first["proofs"].size() > 4);
    for (const auto& proof : first["proofs"]) CHECK(proof["state"] == "same-file");
    CHECK(first["fit_for_sale"] == true);
    audited("--sign kit/proofs.yaml", folder.path());
    CHECK(read(folder / "kit/proofs.yaml") == written);

    // One bar of the cover is drawn elsewhere: its sheets and no others have to be printed again.
    const std::string cover = read(folder / "kit/art/cover.pdf");
    REQUIRE(run("qpdf kit/art/cover.pdf --pages . 1 -- --rotate=180:1 turned.pdf && mv turned.pdf kit/art/cover.pdf", folder.path()).status == 0);
    std::size_t changed = 0;
    const nlohmann::json second = audited("", folder.path());
    for (const auto& proof : second["proofs"]) {
        const bool of_cover = proof["file"].get<std::string>().ends_with("/cover.pdf");
        INFO(proof.dump());
        CHECK(proof["holds"] == !of_cover);
        changed += of_cover;
    }
    CHECK(changed > 0);
    const std::string report = quirewright("audit kit --out out --html report.html", folder.path()).text;
    CHECK(report.find("no longer holds") != std::string::npos);
    CHECK(read(folder / "report.html").find("Signed proofs") != std::string::npos);

    // They are added as blanks, below what was written.
    audited("--sign kit/proofs.yaml", folder.path());
    const std::string added = read(folder / "kit/proofs.yaml");
    CHECK(added.size() > written.size());
    CHECK(added.substr(0, written.size()) == written);
    write(folder / "kit/art/cover.pdf", cover);
    const nlohmann::json back = audited("", folder.path());
    for (const auto& proof : back["proofs"]) CHECK(proof["holds"] == true);
}

TEST_CASE("a file of signatures that is wrong is refused with its line", "[proofing]") {
    TestFolder folder;
    std::filesystem::rename(copy_of_kit("lamplight-mini", folder.path()), folder / "kit");
    write(folder / "kit/proofs.yaml", "format: 1\nkit: lamplight-mini\nproofs: []\nsigned: yes\n");
    const Said said = quirewright("audit kit --json", folder.path());
    CHECK(said.status == 2);
    const nlohmann::json fault = nlohmann::json::parse(said.text)["faults"][0];
    CHECK(fault["file"] == "proofs.yaml");
    CHECK(fault["line"] == 4);
    write(folder / "kit/proofs.yaml", "format: 1\nkit: another\nproofs: []\n");
    CHECK(quirewright("audit kit", folder.path()).status == 2);
}
