// The whole log as charts: wood use against hours, air and wind, for some pits and days, with the
// same numbers as a table, and both to take away.
#pragma once

#include "models/domain/fire/use_line.h"
#include "views/page.h"

class QButtonGroup;
class QComboBox;
class QStackedWidget;

namespace rickyard::views {

class FieldEditor;
class LogChart;
class LogTable;
class SentenceLabel;
class TextLabel;

class LogCharts : public QWidget
{
    Q_OBJECT

public:
    explicit LogCharts(PageContext &context, QWidget *parent = nullptr);

    [[nodiscard]] LogChart &chart() { return *m_chart; }
    [[nodiscard]] LogTable &table() { return *m_table; }
    [[nodiscard]] QComboBox &pits() { return *m_pits; }
    [[nodiscard]] FieldEditor &from() { return *m_from; }
    [[nodiscard]] FieldEditor &until() { return *m_until; }
    void setAgainst(domain::UseAgainst against);
    [[nodiscard]] QString sentence() const;
    // Of what is shown. Gives the reason when it fails.
    std::optional<QString> exportTable(const QString &path) const;

protected:
    void showEvent(QShowEvent *event) override;

private:
    void build();
    QWidget *buildFilters();
    FieldEditor *dayFilter(const QString &label, const QString &spoken);
    void fillPits();
    void refresh();
    [[nodiscard]] QVector<domain::CookFuel> chosenCooks() const;
    void askForPicture();
    void askForTable();

    PageContext &m_context;
    domain::UseAgainst m_against = domain::UseAgainst::Hours;
    QVector<domain::CookFuel> m_cooks; // shown
    QVector<domain::UseLine> m_lines;
    bool m_stale = true; // answers came while it was out of sight
    QStackedWidget *m_stack = nullptr;
    QButtonGroup *m_choice = nullptr;
    QComboBox *m_pits = nullptr;
    FieldEditor *m_from = nullptr;
    FieldEditor *m_until = nullptr;
    SentenceLabel *m_sentence = nullptr;
    TextLabel *m_basis = nullptr;
    LogChart *m_chart = nullptr;
    LogTable *m_table = nullptr;
};

} // namespace rickyard::views
