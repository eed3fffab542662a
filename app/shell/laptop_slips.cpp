// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/laptop_slips.h"

#include "app/desk/background_work.h"
#include "app/desk/formats.h"
#include "app/shell/file_target.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "core/trade/limits.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr const char* kFolderNote = "news-folder";

QString fileWord(const QString& name) {
    QString word = name.simplified();
    word.replace(QLatin1Char('/'), QLatin1Char('-')).replace(QLatin1Char(' '), QLatin1Char('-'));
    return word;
}

// A name that is free: with a number where it is taken.
QString freePath(const QString& folder, const QString& name, const QString& ending) {
    QString path = QDir(folder).filePath(name + ending);
    for (int number = 2; QFileInfo::exists(path); ++number)
        path = QDir(folder).filePath(QStringLiteral("%1-%2%3").arg(name).arg(number).arg(ending));
    return path;
}

QString newsEnding() {
    return QStringLiteral(".holdfast-news");
}

} // namespace

QString newsFolder(ShopDesk& desk) {
    const auto note = desk.file().read([&](db::Connection&) { return desk.file().note(kFolderNote); });
    const QString kept = note.ok() && *note ? words(**note) : QString();
    if (!kept.isEmpty() && QFileInfo(kept).isDir())
        return kept;
    return QFileInfo(words(desk.file().path().string())).absolutePath();
}

void keepNewsFolder(ShopDesk& desk, const std::filesystem::path& news) {
    desk.file().keepNote(kFolderNote, news.parent_path().string());
}

// ── a copy of the shop for another laptop ─────────────────────────────────────────────────────────────

CopyForLaptopSlip::CopyForLaptopSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Copy for a laptop"),
               tr("A whole copy of the shop with 1000 order numbers of its own. Carry it over and open it "
                  "there; do "
                  "not open it on two laptops."),
               parent) {
    form().line("name", tr("The laptop’s name"))->setPlaceholder(tr("e.g. Fair laptop"));
    askForNewFile(form(), tr("Into the new file"),
                  freePath(newsFolder(shopDesk), tr("shop-for-a-laptop"), QStringLiteral(".holdfast")),
                  tr("Where it goes"));
    beginAt("name");
    setAction(tr("Make the copy"));
}

void CopyForLaptopSlip::act() {
    const std::string name = plain(form().text("name"));
    if (const auto sound =
            typedText(name, {.field = "name", .what = phrase("The laptop’s name"), .most = 40});
        !sound.ok())
        say(sound.error());
    const std::filesystem::path target = newFileIn(form());
    if (!form().isSound())
        return;
    emit copyAsked(target, name);
}

// ── news for another laptop ───────────────────────────────────────────────────────────────────────────

WriteNewsSlip::WriteNewsSlip(ShopDesk& shopDesk, std::vector<db::Seat> others, bool isTheWorkshop,
                             QWidget* parent)
    : FormSlip(shopDesk, tr("Save news"),
               isTheWorkshop
                   ? tr("What the laptop does not have yet, in one file for a stick.")
                   : tr("What was done here and the workshop does not have yet, in one file for a stick."),
               parent)
    , m_others(std::move(others))
    , m_isTheWorkshop(isTheWorkshop) {
    if (m_isTheWorkshop && m_others.size() > 1) {
        QVector<PickItem> names;
        for (const db::Seat& seat : m_others)
            names.append({words(seat.name)});
        auto* list = form().list("laptop", tr("For"), names, 0);
        connect(list, &PickList::currentIndexChanged, this, &WriteNewsSlip::suggestPath);
    }
    askForNewFile(form(), tr("Into the new file"), {}, tr("Where the news goes"));
    suggestPath();
    beginAt("path");
    setAction(tr("Save the news"));
}

const db::Seat* WriteNewsSlip::reader() const {
    if (!m_isTheWorkshop)
        return nullptr;
    if (m_others.size() == 1)
        return &m_others.front();
    const auto* list = form().findChild<PickList*>(QStringLiteral("laptop"));
    return &m_others[static_cast<std::size_t>(std::max(0, list->currentIndex()))];
}

// The usual name, until the person says another.
void WriteNewsSlip::suggestPath() {
    auto* path = form().findChild<LongField*>(QStringLiteral("path"));
    if (path->text() != m_suggested)
        return;
    const db::Seat* to = reader();
    const QString name = to ? tr("news-for-%1").arg(fileWord(words(to->name))) : tr("news-for-the-workshop");
    m_suggested = freePath(newsFolder(desk()), name, newsEnding());
    path->setText(m_suggested);
}

void WriteNewsSlip::act() {
    const std::filesystem::path target = newFileIn(form());
    if (target.empty())
        return;
    const db::Seat* to = reader();
    emit newsAsked(target, to ? to->number : db::kWorkshopSeat);
}

// ── news of another laptop ────────────────────────────────────────────────────────────────────────────

TakeInNewsSlip::TakeInNewsSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Bring in news"), tr("The file that was saved on the other laptop."), parent)
    , m_found(new Banner)
    , m_looking(new BackgroundWork(this)) {
    QString newest;
    const QFileInfoList files =
        QDir(newsFolder(shopDesk))
            .entryInfoList({QStringLiteral("*") + newsEnding()}, QDir::Files, QDir::Time);
    if (!files.isEmpty())
        newest = files.front().absoluteFilePath();
    auto* path = form().longLine("path", tr("The file with the news"), newest);
    path->setPlaceholder(tr("the whole path"));
    auto* browse = new Button(tr("Choose a file"), QStringLiteral("search"));
    browse->setObjectName(QStringLiteral("browseNews"));
    connect(browse, &QAbstractButton::clicked, this, &TakeInNewsSlip::chooseFile);
    form().add(browse);
    m_found->setObjectName(QStringLiteral("foundNews"));
    m_found->hide();
    form().add(m_found);
    connect(path, &LongField::edited, this, [this] {
        m_isSeen = false;
        m_looking->stop();
        m_found->hide();
        setAction(tr("Read the file"));
    });
    connect(m_looking, &BackgroundWork::succeeded, this, [this] { endLook({}); });
    connect(m_looking, &BackgroundWork::failed, this, &TakeInNewsSlip::endLook);
    beginAt("path");
    setAction(tr("Read the file"));
    if (!newest.isEmpty())
        look();
}

void TakeInNewsSlip::chooseFile() {
    auto* path = form().findChild<LongField*>(QStringLiteral("path"));
    const QString file = QFileDialog::getOpenFileName(
        this, tr("The news"), QFileInfo(path->text()).absolutePath(),
        tr("News (*%1);;All files (*)").arg(newsEnding()), nullptr, QFileDialog::DontUseNativeDialog);
    if (file.isEmpty())
        return;
    path->setText(file);
    look();
}

// On a thread of its own: the file may be long, and nobody knows who wrote it.
void TakeInNewsSlip::look() {
    form().clearErrors();
    m_lookedAt = form().text("path");
    m_head = std::make_shared<std::optional<db::NewsHead>>();
    const bool began = m_looking->begin(
        tr("Reading the news"),
        [head = m_head, news = std::filesystem::path(plain(m_lookedAt)), shop = desk().file().path(),
         clock = desk().clock().now](const BackgroundWork::Progress& progress) -> Result<std::string> {
            const auto file = db::Shop::openReadOnly(shop, clock);
            if (!file.ok())
                return file.error();
            const auto found = db::lookAtNews(**file, news, progress);
            if (!found.ok())
                return found.error();
            *head = *found;
            return std::string{};
        });
    if (began)
        action()->setCannot(tr("The file is being read."));
}

// `refusal` is empty where the news can be brought in. What was read before another path was typed is
// dropped.
void TakeInNewsSlip::endLook(const QString& refusal) {
    action()->setCannot({});
    if (m_lookedAt != form().text("path"))
        return;
    if (!refusal.isEmpty()) {
        m_found->hide();
        return form().setError("path", refusal);
    }
    const db::NewsHead& head = **m_head;
    const LocalTime written = desk().now().toLocal(head.writtenAt);
    m_found->set(Tone::Ready, tr("News of %1,").arg(words(head.fromName)),
                 tr("saved %1 %2: %3 in it.")
                     .arg(dayNear(dateOf(written), desk().now().today()), clock(written),
                          tr("one entry|%n entries", nullptr, howMany(head.entries))));
    m_found->show();
    m_isSeen = true;
    setAction(tr("Bring in the news"));
}

void TakeInNewsSlip::act() {
    if (form().text("path").isEmpty())
        return form().setError("path", tr("Say which file: its whole path."));
    if (!m_isSeen)
        return look();
    emit takingInAsked(std::filesystem::path(plain(form().text("path"))));
}

// ── the workshop's file is lost ───────────────────────────────────────────────────────────────────────

BecomeWorkshopSlip::BecomeWorkshopSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Make this the workshop’s copy"),
               tr("For when the workshop’s file is lost and no backup of it can be put back. Work goes on "
                  "here with all that is in this copy; what was only in the lost file is not in it. Other "
                  "laptops then exchange news with this one. This cannot be undone."),
               parent) {
    setAction(tr("Make it the workshop’s"));
}

void BecomeWorkshopSlip::act() {
    emit becomingAsked();
}

} // namespace holdfast::app
