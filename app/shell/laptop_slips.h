// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the second laptop asks for: a copy of the shop for it, and news written and taken in. The work itself
// is done in the background by the shell.

#include "app/slips/form_slip.h"
#include "db/exchange/exchange.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

namespace holdfast::app {

class BackgroundWork;
class Banner;

class CopyForLaptopSlip : public FormSlip {
    Q_OBJECT

public:
    explicit CopyForLaptopSlip(ShopDesk& desk, QWidget* parent = nullptr);

signals:
    void copyAsked(const std::filesystem::path& target, const std::string& name);

protected:
    void act() override;
};

class WriteNewsSlip : public FormSlip {
    Q_OBJECT

public:
    // `others` as db::seats gives them, without this one.
    WriteNewsSlip(ShopDesk& desk, std::vector<db::Seat> others, bool isTheWorkshop,
                  QWidget* parent = nullptr);

signals:
    void newsAsked(const std::filesystem::path& target, holdfast::db::SeatNumber laptop);

protected:
    void act() override;

private:
    const db::Seat* reader() const;
    void suggestPath();

    std::vector<db::Seat> m_others;
    bool m_isTheWorkshop;
    QString m_suggested;
};

class TakeInNewsSlip : public FormSlip {
    Q_OBJECT

public:
    explicit TakeInNewsSlip(ShopDesk& desk, QWidget* parent = nullptr);

signals:
    void takingInAsked(const std::filesystem::path& news);

protected:
    void act() override;

private:
    void look();
    void endLook(const QString& refusal);
    void chooseFile();

    Banner* m_found = nullptr;
    BackgroundWork* m_looking = nullptr;
    QString m_lookedAt; // the path that is being read, or was last
    std::shared_ptr<std::optional<db::NewsHead>> m_head;
    bool m_isSeen = false; // the file named was looked at and may be taken in
};

// The workshop's file is lost, and this copy takes its place.
class BecomeWorkshopSlip : public FormSlip {
    Q_OBJECT

public:
    explicit BecomeWorkshopSlip(ShopDesk& desk, QWidget* parent = nullptr);

signals:
    void becomingAsked();

protected:
    void act() override;
};

// Where news was last written or taken in: the stick, mostly.
QString newsFolder(ShopDesk& desk);
void keepNewsFolder(ShopDesk& desk, const std::filesystem::path& news);

} // namespace holdfast::app
