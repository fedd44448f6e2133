// The load list on screen: how sure it should be, what is short, what bars lighting and towing, and
// every line to be ticked off while loading; print, PDF and text from the same sheet. It follows
// the answers while it is open; ticks are remembered until the amounts change.
#pragma once

#include "models/domain/plan/load_list_sheet.h"
#include "views/page.h"
#include "views/theme/theme.h"

#include <QDialog>

class QCheckBox;
class QComboBox;
class QVBoxLayout;

namespace rickyard::views {

struct LoadGroup;
struct Paper;
class LoadWords;
class SentenceLabel;
class TextLabel;

class LoadListView : public QDialog
{
    Q_OBJECT

public:
    // `about`: an event or a planned cook.
    LoadListView(PageContext &context, const domain::Link &about, QWidget *parent = nullptr);
    [[nodiscard]] double chance() const;
    [[nodiscard]] QString plainText() const;
    [[nodiscard]] int ticked() const;
    // What is printed.
    [[nodiscard]] std::optional<Paper> paper() const;

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

private:
    void build();
    void refresh();
    void showSheet();
    void showShortage(const LoadWords &words);
    void showBars(const LoadWords &words);
    void showGroup(const LoadGroup &group);
    void showTrailer(const LoadWords &words);
    void addText(const QString &text, TextStyle style, Role role);
    void tick(const QString &key, bool on);
    void followTicks();
    void print();
    [[nodiscard]] QString settingsKey() const;

    PageContext &m_context;
    domain::Link m_about;
    std::optional<domain::WeatherSeries> m_weather;
    std::optional<domain::LoadSheet> m_sheet;
    QStringList m_ticks;
    QStringList m_said;
    QVector<QCheckBox *> m_boxes;
    TextLabel *m_title = nullptr;
    TextLabel *m_subtitle = nullptr;
    QComboBox *m_chance = nullptr;
    SentenceLabel *m_amount = nullptr;
    QVBoxLayout *m_column = nullptr;
    TextLabel *m_done = nullptr;
    QWidget *m_acts = nullptr;
};

// Opens one that lives until it is closed.
void openLoadList(PageContext &context, const domain::Link &about, QWidget *parent);

} // namespace rickyard::views
