// How a logger's columns become traces: when each row was, and which columns are probes.
#pragma once

#include "models/exchange/probe_log.h"
#include "views/records/mapping_form.h"

#include <QTimeZone>

class QCheckBox;
class QDateTimeEdit;
class QGridLayout;
class QVBoxLayout;

namespace rickyard::views {

class TextLabel;

class TraceMappingForm : public MappingForm
{
    Q_OBJECT

public:
    // `zone`: of the yard; the start of a log without dates is typed in it.
    explicit TraceMappingForm(const QTimeZone &zone, QWidget *parent = nullptr);

    // The headers that columns are chosen from.
    void setHeader(const QStringList &header);
    void setMapping(const exchange::ProbeLogMapping &mapping);
    // `from` and `to` are not of this form and stay empty.
    [[nodiscard]] exchange::ProbeLogMapping mapping() const;

    // Of a column: the box that makes it a probe, and its name.
    [[nodiscard]] QCheckBox *probeBox(const QString &column) const;
    [[nodiscard]] QLineEdit *probeName(const QString &column) const;
    [[nodiscard]] QComboBox *unitBox() const { return m_unit; }
    [[nodiscard]] QComboBox *timeStyleBox() const { return m_timeStyle; }

protected:
    bool showElsewhere(const domain::Problem &problem) override;
    void clearElsewhere() override;

private:
    struct Probe {
        QString column;
        QCheckBox *box = nullptr;
        QLineEdit *name = nullptr;
    };
    void buildTime(QVBoxLayout *column);
    void buildProbes(QVBoxLayout *column);
    void fillProbes();
    void fillTimes();
    void showWays();
    [[nodiscard]] QDateTime wallClock(domain::Instant time) const;

    exchange::ProbeLogMapping m_mapping; // parts that are not shown are kept
    QTimeZone m_yardZone;
    QStringList m_header;
    QVector<Probe> m_probes;
    QComboBox *m_timeStyle = nullptr;
    QComboBox *m_time = nullptr;
    QComboBox *m_date = nullptr;
    QLineEdit *m_format = nullptr;
    QComboBox *m_scale = nullptr;
    QDateTimeEdit *m_start = nullptr;
    QWidget *m_probeHolder = nullptr;
    QGridLayout *m_probeGrid = nullptr;
    TextLabel *m_probeProblem = nullptr;
    QComboBox *m_unit = nullptr;
};

} // namespace rickyard::views
