// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/fault.h"
#include "cli/common.h"
#include "cli/progress.h"
#include "release/release.h"

#include <unistd.h>

namespace qw::cli {

namespace {

/// A folder of this run's own for what an audit has to make in order to look at it; gone when the audit is done.
class Scratch {
public:
    explicit Scratch(Disk& disk) : disk_(disk) {
        std::string name = (std::filesystem::temp_directory_path() / "quirewright-XXXXXX").string();
        if (!::mkdtemp(name.data())) {
            throw Fault(FaultKind::not_carried_out, {"disk", {name, 0, 0}, "no temporary folder can be made", "", "set TMPDIR to a folder with room"});
        }
        folder_ = name;
    }
    ~Scratch() {
        try {
            disk_.remove(folder_);
        } catch (const Fault&) {  // a temporary folder that stays is no reason to lose the report
        }
    }
    const Path& folder() const { return folder_; }

private:
    Disk& disk_;
    Path folder_;
};

/// The files that are asked for beside the subject, as they were typed.
struct Files {
    std::string html, text, proofing, sign;
};

report::AuditReport audited(Session& session, const std::string& subject, const Files& files) {
    const auto stat = std::filesystem::status(subject);
    if (!std::filesystem::exists(stat)) {
        throw Fault(FaultKind::not_understood, {"no-subject", {subject, 0, 0}, "there is no such file or folder", "a kit, a release folder or a bundle", ""});
    }
    release::Order order = session.order(subject);
    if (!files.text.empty()) order.text = files.text;
    if (!files.proofing.empty()) order.proofing = files.proofing;
    if (!files.sign.empty()) order.sign = files.sign;
    const bool is_kit = std::filesystem::is_directory(stat) && !session.disk->stat(Path(subject) / "release.json");
    if (order.text && !is_kit) {
        throw Fault(FaultKind::not_understood, {"text-without-kit",
                                                {subject, 0, 0},
                                                "a text is held against the kit's own numbers, which releases and bundles do not hold",
                                                "a folder with kit.yaml",
                                                "audit the kit's folder with --text, and this without it"});
    }
    if ((order.proofing || order.sign) && !is_kit) {
        throw Fault(FaultKind::not_understood, {"proofs-without-kit",
                                                {subject, 0, 0},
                                                "which sheets are to be printed follows from the kit, which releases and bundles do not hold",
                                                "a folder with kit.yaml",
                                                "audit the kit's folder with --proofing or --sign"});
    }
    const Scratch scratch(*session.disk);
    TerminalProgress progress;
    if (!std::filesystem::is_directory(stat)) return release::audit_bundle(*session.disk, order, subject, scratch.folder(), progress);
    if (session.disk->stat(Path(subject) / "release.json")) return release::audit_release(*session.disk, order, subject, scratch.folder(), progress);
    return release::audit_kit(*session.disk, order, scratch.folder(), progress);
}

}  // namespace

void add_audit(CLI::App& app, Session& session) {
    auto* command = app.add_subcommand("audit", "Check a kit, a release or a bundle before sale");
    command->footer("A kit is made in a temporary folder and every page is rendered; nothing is written but the files named here.");
    auto subject = std::make_shared<std::string>();
    auto files = std::make_shared<Files>();
    command->add_option("SUBJECT", *subject, "Folder with kit.yaml, release folder, or bundle (.zip)")->required();
    command->add_option("--html", files->html, "Write the report as a page to this file")->type_name("FILE");
    command->add_option("--text", files->text, "Hold this listing text (plain or Markdown) against the kit")->type_name("FILE");
    command->add_option("--proofing", files->proofing, "Write the fewest sheets that show every risk on paper, with a check list, to this PDF")->type_name("FILE");
    command
        ->add_option("--sign", files->sign,
                     "Write the form for signed proofs to this YAML file, or read what is signed there and add the sheets that are missing")
        ->type_name("FILE");
    add_common(*command, session.common, true);
    command->callback([&session, subject, files] {
        session.chosen = [&session, subject, files] {
            const report::AuditReport report = audited(session, *subject, *files);
            if (!files->html.empty()) write_file(*session.disk, files->html, report::to_html(report));
            print(session.common.json ? report::to_json(report) : report::to_text(report));
            return report.fit_for_sale() ? 0 : 1;
        };
    });
}

}  // namespace qw::cli
