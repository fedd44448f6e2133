// A small yard in a temporary folder, with everything a page is given. Invented data.
#pragma once

#include "views/page.h"

#include <QSettings>
#include <QTemporaryDir>

#include <memory>

namespace rickyard::test {

// 2026-11-25 18:00 in Chicago.
constexpr domain::Instant kFixtureNow = domain::Instant::ofSeconds(1795651200);

class YardFixture
{
public:
    explicit YardFixture(bool filled = true);
    ~YardFixture();

    QTemporaryDir folder;
    domain::Instant now = kFixtureNow;
    std::unique_ptr<workspace::Workspace> workspace;
    std::unique_ptr<commands::Verbs> verbs;
    std::unique_ptr<workspace::AnswersService> answers;
    std::unique_ptr<QSettings> settings;
    std::unique_ptr<views::PageContext> context;

    // What pages said and asked for.
    QStringList said;
    QStringList refused;
    QVector<domain::Link> opened;

    // Ids of the filled yard.
    domain::RecordId oak = 0, hickory = 0, supplier = 0;
    domain::RecordId bigPit = 0, smallPit = 0;
    domain::RecordId dryLot = 0, wetLot = 0;
    QVector<domain::RecordId> cooks;
    domain::RecordId event = 0, plannedCook = 0;
    domain::RecordId task = 0;

    void waitForAnswers();

private:
    void fill();
    void fillWood();
    void fillFire();
    void fillPlan();
};

} // namespace rickyard::test
