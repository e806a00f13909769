package piece

func sessionPlan(j *Job) (*Result, error) { return attendance(j) }
